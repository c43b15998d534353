using System.Text.Json;
using System.Text.Json.Serialization;
using EolSequencer.Language.Editing;
using EolSequencer.Rehearsal.ExpectedResults;
using StreamJsonRpc;

namespace EolSequencer.Cli.LanguageServer;

/// <summary>Serves one editor over a pair of streams.</summary>
internal static class Server
{
    /// <summary>Runs until the editor says exit or hangs up.</summary>
    /// <param name="complain">Told in words when what comes is no protocol.</param>
    /// <returns>0 after an orderly shutdown, else 1.</returns>
    public static async Task<int> Run(Stream input, Stream output, TimeProvider time, Action<string> complain)
    {
        var formatter = new SystemTextJsonFormatter
        {
            JsonSerializerOptions = new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull },
        };
        using var rpc = new JsonRpc(new HeaderDelimitedMessageHandler(output, input, formatter));
        var (editor, turns, paths) = (new PlantEditor(new RehearsalKnowledge()), new EditorTurns(), new DocumentPaths());
        var checks = new CheckLoop(editor, turns, time, (path, found) => rpc.NotifyWithParameterObjectAsync(
            "textDocument/publishDiagnostics", new PublishDiagnostics(paths.UriOf(path), [.. found.Select(Translation.Of)])));
        var session = new LanguageSession(editor, turns, paths, checks);
        rpc.AddLocalRpcTarget(session);
        rpc.StartListening();

        var checking = Task.Run(checks.Run);
        var first = await Task.WhenAny(session.Ended, rpc.Completion, FaultOf(checking));
        checks.Stop();
        await Settle(checking);
        if (first == session.Ended) return await session.Ended;
        if (rpc.Completion.Exception is { } fault) complain($"what came is no message of the protocol: {fault.GetBaseException().Message}");
        return 1;
    }

    // Checking that ends because it was told to is no event.
    private static async Task FaultOf(Task checking)
    {
        await checking;
        await Task.Delay(Timeout.Infinite);
    }

    // An editor that hangs up takes nothing of what is still on its way.
    private static async Task Settle(Task checking)
    {
        try
        {
            await checking;
        }
        catch (Exception fault) when (fault is ConnectionLostException or ObjectDisposedException or IOException)
        {
        }
    }
}
