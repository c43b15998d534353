namespace EolSequencer.Wire.Uds;

/// <summary>Service 23: reads memory.</summary>
/// <remarks>
/// Source: ISO 14229-1, ReadMemoryByAddress. The format byte has the number of size bytes in its high and of address
/// bytes in its low half.
/// </remarks>
public static class ReadMemoryByAddress
{
    private const ServiceId Service = ServiceId.ReadMemoryByAddress;
    private const int FieldMax = 8;

    /// <param name="Address">First byte to be read.</param>
    /// <param name="Size">Number of bytes.</param>
    public readonly record struct Request(ulong Address, ulong Size);

    /// <param name="request">What to read.</param>
    /// <param name="addressBytes">Width of the address, 1 to 8 bytes.</param>
    /// <param name="sizeBytes">Width of the size, 1 to 8 bytes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width out of range, or too small for its number.</exception>
    public static byte[] MakeRequest(Request request, int addressBytes, int sizeBytes)
    {
        var message = new byte[2 + addressBytes + sizeBytes];
        message[0] = (byte)Service;
        message[1] = (byte)((sizeBytes << 4) | addressBytes);
        Write(message.AsSpan(2, addressBytes), request.Address);
        Write(message.AsSpan(2 + addressBytes, sizeBytes), request.Size);
        return message;
    }

    /// <summary>False: the length does not go with the format byte (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Request request)
    {
        request = default;
        if (message.Length < 2 || !Bytes.IsRequest(message, Service))
        {
            return false;
        }

        var (sizeBytes, addressBytes) = (message[1] >> 4, message[1] & 0xF);
        if (sizeBytes is 0 or > FieldMax || addressBytes is 0 or > FieldMax || message.Length != 2 + addressBytes + sizeBytes)
        {
            return false;
        }

        request = new Request(Read(message.Slice(2, addressBytes)), Read(message[(2 + addressBytes)..]));
        return true;
    }

    public static byte[] MakeResponse(ReadOnlySpan<byte> memory) => Bytes.Join([Bytes.PositiveOf(Service)], memory);

    /// <summary>The bytes read.</summary>
    /// <param name="message">The response, which repeats neither address nor size.</param>
    /// <param name="size">How many bytes were asked for.</param>
    public static Decoded<ReadOnlyMemory<byte>> ReadResponse(ReadOnlyMemory<byte> message, int size)
    {
        var fault = Bytes.HeadFault(message.Span, Service, 1 + size)
            ?? (message.Length > 1 + size ? $"{message.Length - 1 - size} bytes too many" : null);
        return fault is null ? message[1..] : Decoded<ReadOnlyMemory<byte>>.Faulty(fault);
    }

    private static void Write(Span<byte> field, ulong number)
    {
        ArgumentOutOfRangeException.ThrowIfZero(field.Length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(field.Length, FieldMax);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, ulong.MaxValue >> (64 - (8 * field.Length)));
        for (var i = field.Length - 1; i >= 0; i--, number >>= 8)
        {
            field[i] = (byte)number;
        }
    }

    private static ulong Read(ReadOnlySpan<byte> field)
    {
        var number = 0UL;
        foreach (var value in field)
        {
            number = (number << 8) | value;
        }

        return number;
    }
}
