using System.Collections.Concurrent;
using System.Text;
using EolSequencer.Simulators.Outside;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A serial port whose other end is in the test's hands, plug included.</summary>
internal sealed class Cable : IDisposable
{
    private readonly ConcurrentQueue<byte> _written = new();
    private PseudoTerminal? _terminal;

    public Cable() => Plug();

    /// <summary>The name that a program opens.</summary>
    public string Port { get; } = Path.Combine(Path.GetTempPath(), "eol-cable-" + Guid.NewGuid().ToString("N"));

    /// <summary>What has come from the program; called on a thread of its own.</summary>
    public Action<byte[]>? Arrived { get; set; }

    /// <summary>What the program has written so far.</summary>
    public string Written => Encoding.Latin1.GetString([.. _written]);

    public void Plug()
    {
        _terminal = PseudoTerminal.Open(Port, Take, out var fault);
        Assert.Null(fault);
    }

    public void Pull() => _terminal!.Dispose();

    public void Give(string text) => Assert.Equal(text.Length, _terminal!.Write(Encoding.Latin1.GetBytes(text)));

    /// <summary>Bytes that the program did not take in time.</summary>
    public int Lost { get; private set; }

    public void Give(byte[] bytes) => Lost += bytes.Length - _terminal!.Write(bytes);

    public void Dispose() => _terminal!.Dispose();

    private void Take(byte[] bytes)
    {
        foreach (var one in bytes) _written.Enqueue(one);
        Arrived?.Invoke(bytes);
    }
}
