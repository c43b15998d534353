using System.Text;
using EolSequencer.Devices.Serial;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>Notes what a serial line hands on.</summary>
internal sealed class LineLog : ISerialListener
{
    private readonly StringBuilder _text = new();

    public string Text => _text.ToString();

    public List<(bool IsUp, string? Cause)> Changes { get; } = [];

    public List<long> Stamps { get; } = [];

    public void Received(ReadOnlySpan<byte> bytes, long stamp)
    {
        _text.Append(Encoding.Latin1.GetString(bytes));
        Stamps.Add(stamp);
    }

    public void LinkChanged(bool isUp, string? cause, long stamp) => Changes.Add((isUp, cause));
}
