using System.Text;
using EolSequencer.Devices.Serial;
using EolSequencer.Model.Waiting;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A serial line in virtual time: a millisecond there, a millisecond back.</summary>
internal sealed class FakeLine(VirtualTime time) : ISerialLine
{
    private static readonly TimeSpan Way = TimeSpan.FromMilliseconds(1);
    private readonly StringBuilder _written = new();

    public ISerialListener Listener { get; set; } = null!;

    public bool IsUp { get; private set; } = true;

    public bool IsClosed { get; private set; }

    /// <summary>What was sent so far.</summary>
    public string Written => _written.ToString();

    /// <summary>Takes what is sent when it arrives.</summary>
    public Action<byte[]>? Arrived { get; set; }

    public ValueTask<(ISerialLine? Line, string? Fault)> OpenFor(ISerialListener listener)
    {
        Listener = listener;
        return new((this, null));
    }

    public async ValueTask<string?> SendAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel)
    {
        if (!IsUp || IsClosed) return "the line is gone";
        var sent = bytes.ToArray();
        _written.Append(Encoding.Latin1.GetString(sent));
        time.At(time.Now + Way, () => Arrived?.Invoke(sent));
        await Pause.ForAsync(TimeSpan.FromMilliseconds(0.1), time, cancel);
        return null;
    }

    public void Give(string text) => Give(Encoding.Latin1.GetBytes(text));

    public void Give(byte[] bytes) => time.At(time.Now + Way, () =>
    {
        if (IsUp && !IsClosed) Listener.Received(bytes, time.GetTimestamp());
    });

    public void SetLink(bool isUp)
    {
        if (IsUp == isUp) return;
        IsUp = isUp;
        Listener.LinkChanged(isUp, isUp ? null : "the port is gone", time.GetTimestamp());
    }

    public ValueTask DisposeAsync()
    {
        IsClosed = true;
        return default;
    }
}
