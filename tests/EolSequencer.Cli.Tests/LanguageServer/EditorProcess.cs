using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.LanguageServer;

/// <summary>
/// An editor of a few lines: it starts the program, writes messages of the protocol with its own hands and reads what comes.
/// Works on a copy of the demo plant.
/// </summary>
internal sealed class EditorProcess : IDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(90);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-editor");
    private readonly Process _process = Eol.Start("serve-language");
    private readonly Queue<JsonNode> _told = new();
    private readonly StringBuilder _errors = new();
    private int _id;

    public EditorProcess()
    {
        var from = Path.Combine(Repository.Root, "sequences", "demo");
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder.FullName, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        _process.ErrorDataReceived += (_, line) => _errors.AppendLine(line.Data);
        _process.BeginErrorReadLine();
    }

    public string PathOf(string relative) => Path.Combine(_folder.FullName, relative.Replace('/', Path.DirectorySeparatorChar));

    public string UriOf(string relative) => new Uri(PathOf(relative)).AbsoluteUri;

    public JsonNode Ask(string method, JsonNode? parameters)
    {
        var id = ++_id;
        Send(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        while (true)
        {
            var message = Read() ?? throw new InvalidOperationException($"the server hung up: {_errors}");
            if (message["id"]?.GetValue<int>() == id) return message;
            _told.Enqueue(message);
        }
    }

    public JsonNode? Result(string method, JsonNode? parameters) => Ask(method, parameters)["result"];

    public void Tell(string method, JsonNode? parameters) => Send(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Waits for the next published findings of a file that fit.</summary>
    public JsonArray Published(string relative, Func<JsonArray, bool> fits)
    {
        while (true)
        {
            var message = _told.TryDequeue(out var told) ? told : Read() ?? throw new InvalidOperationException($"the server hung up: {_errors}");
            if (message["method"]?.GetValue<string>() != "textDocument/publishDiagnostics" || message["params"]!["uri"]!.GetValue<string>() != UriOf(relative)) continue;
            if (message["params"]!["diagnostics"]!.AsArray() is var found && fits(found)) return found;
        }
    }

    public void SendRaw(byte[] bytes)
    {
        _process.StandardInput.BaseStream.Write(bytes);
        _process.StandardInput.BaseStream.Flush();
    }

    public void HangUp() => _process.StandardInput.Close();

    public (int Code, string Errors) End()
    {
        if (!_process.WaitForExit(Longest)) throw new TimeoutException("the server did not end");
        _process.WaitForExit();
        return (_process.ExitCode, _errors.ToString());
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill();
        _process.Dispose();
        _folder.Delete(recursive: true);
    }

    private void Send(JsonNode message)
    {
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        SendRaw([.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body]);
    }

    private JsonNode? Read()
    {
        var reading = Task.Run(ReadMessage);
        return reading.Wait(Longest) ? reading.Result : throw new TimeoutException($"nothing came: {_errors}");
    }

    private JsonNode? ReadMessage()
    {
        var stream = _process.StandardOutput.BaseStream;
        var length = 0;
        while (true)
        {
            var line = new StringBuilder();
            int letter;
            while ((letter = stream.ReadByte()) >= 0 && letter != '\n') line.Append((char)letter);
            if (letter < 0) return null;
            var header = line.ToString().Trim();
            if (header.Length == 0) break;
            if (header.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase)) length = int.Parse(header["Content-Length:".Length..].Trim(), CultureInfo.InvariantCulture);
        }

        var body = new byte[length];
        stream.ReadExactly(body);
        return JsonSerializer.Deserialize<JsonNode>(body);
    }
}
