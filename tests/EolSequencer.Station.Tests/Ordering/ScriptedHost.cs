using System.Net;
using System.Net.Sockets;
using System.Text;

namespace EolSequencer.Station.Tests.Ordering;

/// <summary>A host on this computer that answers each request with given bytes, whatever is asked.</summary>
internal sealed class ScriptedHost : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();

    /// <param name="answer">The whole answer, head and body; null: none ever comes.</param>
    public ScriptedHost(string? answer)
    {
        _listener.Start();
        _ = ServeAsync(answer);
    }

    public string Url => $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}/orders/{{vin}}";

    /// <summary>The first line of each request.</summary>
    public List<string> Asked { get; } = [];

    public static string Json(string body, string head = "200 OK", string type = "application/json; charset=utf-8") =>
        $"HTTP/1.1 {head}\r\nContent-Type: {type}\r\nContent-Length: {Encoding.UTF8.GetByteCount(body)}\r\nConnection: close\r\n\r\n{body}";

    public void Dispose()
    {
        _stop.Cancel();
        _listener.Dispose();
        _stop.Dispose();
    }

    private async Task ServeAsync(string? answer)
    {
        try
        {
            while (true)
            {
                using var client = await _listener.AcceptTcpClientAsync(_stop.Token);
                var stream = client.GetStream();
                using var reader = new StreamReader(stream, leaveOpen: true);
                Asked.Add(await reader.ReadLineAsync(_stop.Token) ?? "");
                while (!string.IsNullOrEmpty(await reader.ReadLineAsync(_stop.Token))) { }
                if (answer is null) await Task.Delay(Timeout.Infinite, _stop.Token);
                await stream.WriteAsync(Encoding.UTF8.GetBytes(answer!), _stop.Token);
            }
        }
        catch (Exception fault) when (fault is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
        {
            // The test is over, or whoever asked has gone.
        }
    }
}
