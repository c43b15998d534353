using System.Globalization;
using System.Text;
using EolSequencer.Wire.TextLines;

namespace EolSequencer.Wire.Scpi;

/// <summary>Arbitrary bytes in a message: <c>#</c>, how many digits, the length in that many digits, the bytes.</summary>
/// <remarks>Source: IEEE 488.2-1992, 8.7.9 (definite length) and 8.7.10 (indefinite length: #0, up to the end of the message).</remarks>
public static class BlockData
{
    internal const byte Mark = (byte)'#';

    /// <summary>A block of definite length.</summary>
    public static byte[] Make(ReadOnlySpan<byte> data)
    {
        var length = data.Length.ToString(CultureInfo.InvariantCulture);
        return [.. Encoding.ASCII.GetBytes($"#{length.Length}{length}"), .. data];
    }

    /// <summary>The bytes of a message that is one block.</summary>
    /// <param name="message">Without its terminator.</param>
    public static Decoded<byte[]> Read(ReadOnlySpan<byte> message)
    {
        if (message is [Mark, (byte)'0', ..]) return message[2..].ToArray();
        if (!TryReadHead(message, out var head, out var length)) return Decoded<byte[]>.Faulty($"'{ControlBytes.Show(message, most: 20)}' begins no block");
        return message.Length == head + length
            ? message[head..].ToArray()
            : Decoded<byte[]>.Faulty($"a block of {message.Length - head} bytes that says it has {length}");
    }

    /// <summary>Length of head and data of a block of definite length that begins here; false: its head is not whole or none.</summary>
    internal static bool TryReadHead(ReadOnlySpan<byte> message, out int head, out int length)
    {
        (head, length) = (0, 0);
        if (message is not [Mark, >= (byte)'1' and <= (byte)'9', ..]) return false;
        var digits = message[1] - '0';
        if (message.Length < 2 + digits || message.Slice(2, digits).ContainsAnyExceptInRange((byte)'0', (byte)'9')) return false;
        head = 2 + digits;
        length = int.Parse(message.Slice(2, digits), CultureInfo.InvariantCulture);
        return true;
    }
}
