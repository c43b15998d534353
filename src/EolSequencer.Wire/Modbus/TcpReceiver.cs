using System.Globalization;

namespace EolSequencer.Wire.Modbus;

/// <summary>Puts messages together from a TCP stream, which comes in any pieces.</summary>
/// <remarks>
/// A header that cannot be one means that the place in the stream is lost: from then on nothing is taken, and the
/// connection has to be made anew.
/// </remarks>
public sealed class TcpReceiver
{
    private readonly List<byte> _bytes = [];

    /// <summary>Why the connection is of no use any more; null: it is.</summary>
    public string? Fault { get; private set; }

    /// <summary>What has come of the next message so far.</summary>
    public byte[] Pending => [.. _bytes];

    /// <summary>Takes bytes over; ask <see cref="TryTake"/> until it has nothing.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        if (Fault is null) _bytes.AddRange(bytes);
    }

    /// <summary>The next whole message; false: none is whole yet, or there is a <see cref="Fault"/>.</summary>
    public bool TryTake(out TcpFrame frame)
    {
        frame = default;
        if (Fault is not null || _bytes.Count < TcpFrame.HeaderLength) return false;
        var (protocol, length) = (UInt16(2), UInt16(4));
        if (protocol != 0 || length is < 2 or > TcpFrame.LongestPdu + 1)
        {
            var header = Convert.ToHexString(_bytes.Take(TcpFrame.HeaderLength).ToArray());
            Fault = string.Create(CultureInfo.InvariantCulture, $"{header} is no header of a message (protocol {protocol}, length {length}; protocol 0 and 2 to {TcpFrame.LongestPdu + 1} are due)");
            _bytes.Clear();
            return false;
        }

        var whole = TcpFrame.HeaderLength + length - 1;
        if (_bytes.Count < whole) return false;
        frame = new TcpFrame((ushort)UInt16(0), _bytes[6], _bytes.GetRange(TcpFrame.HeaderLength, length - 1).ToArray());
        _bytes.RemoveRange(0, whole);
        return true;
    }

    /// <summary>Begins anew, with a new connection.</summary>
    public void Clear()
    {
        _bytes.Clear();
        Fault = null;
    }

    private int UInt16(int at) => (_bytes[at] << 8) | _bytes[at + 1];
}
