namespace EolSequencer.Wire.Uds;

/// <summary>Service 22: reads the records of one or several data identifiers.</summary>
/// <remarks>
/// Source: ISO 14229-1, ReadDataByIdentifier. A record has no length of its own on the bus; whoever asks for several
/// knows how long each is.
/// </remarks>
public static class ReadDataByIdentifier
{
    private const ServiceId Service = ServiceId.ReadDataByIdentifier;
    private const int IdentifierLength = 2;

    /// <param name="Identifier">What is asked for.</param>
    /// <param name="Length">Bytes of its record.</param>
    public readonly record struct Expected(ushort Identifier, int Length);

    /// <param name="identifiers">One or more.</param>
    public static byte[] MakeRequest(params ReadOnlySpan<ushort> identifiers)
    {
        ArgumentOutOfRangeException.ThrowIfZero(identifiers.Length);
        var message = new byte[1 + (IdentifierLength * identifiers.Length)];
        message[0] = (byte)Service;
        for (var i = 0; i < identifiers.Length; i++)
        {
            message[1 + (2 * i)] = Bytes.High(identifiers[i]);
            message[2 + (2 * i)] = Bytes.Low(identifiers[i]);
        }

        return message;
    }

    /// <summary>How many identifiers are asked for; false: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out int count)
    {
        var isRight = message.Length > IdentifierLength && message.Length % IdentifierLength == 1 && Bytes.IsRequest(message, Service);
        count = isRight ? message.Length / IdentifierLength : 0;
        return isRight;
    }

    /// <summary>One of the identifiers that a request asks for.</summary>
    /// <param name="request">A request that <see cref="TryReadRequest"/> found right.</param>
    /// <param name="index">From 0.</param>
    public static ushort IdentifierAt(ReadOnlySpan<byte> request, int index) =>
        Bytes.UInt16(request.Slice(1 + (IdentifierLength * index), IdentifierLength));

    public static byte[] MakeResponse(ushort identifier, ReadOnlySpan<byte> record) =>
        Bytes.Join([Bytes.PositiveOf(Service), Bytes.High(identifier), Bytes.Low(identifier)], record);

    /// <summary>A response with the next record behind those it has.</summary>
    public static byte[] Append(ReadOnlySpan<byte> response, ushort identifier, ReadOnlySpan<byte> record) =>
        Bytes.Join(Bytes.Join(response, [Bytes.High(identifier), Bytes.Low(identifier)]), record);

    /// <summary>The record of a response to a request for one identifier.</summary>
    /// <returns>All that follows the identifier; it may be empty.</returns>
    public static Decoded<ReadOnlyMemory<byte>> ReadResponse(ReadOnlyMemory<byte> message, ushort identifier)
    {
        if (Bytes.HeadFault(message.Span, Service, 1 + IdentifierLength) is { } fault)
        {
            return Decoded<ReadOnlyMemory<byte>>.Faulty(fault);
        }

        return IdentifierAt(message.Span, 0) == identifier
            ? message[(1 + IdentifierLength)..]
            : Decoded<ReadOnlyMemory<byte>>.Faulty($"data identifier {IdentifierAt(message.Span, 0):X4} instead of {identifier:X4}");
    }

    /// <summary>The records of a response to a request for several identifiers, in the order of the request.</summary>
    /// <param name="message">The response.</param>
    /// <param name="expected">Identifier and length in bytes of each record.</param>
    public static Decoded<ReadOnlyMemory<byte>[]> ReadResponse(
        ReadOnlyMemory<byte> message, params ReadOnlySpan<Expected> expected)
    {
        if (Bytes.HeadFault(message.Span, Service, 1) is { } fault)
        {
            return Decoded<ReadOnlyMemory<byte>[]>.Faulty(fault);
        }

        var records = new ReadOnlyMemory<byte>[expected.Length];
        var rest = message[1..];
        for (var i = 0; i < expected.Length; i++)
        {
            var (identifier, length) = expected[i];
            if (rest.Length < IdentifierLength + length)
            {
                return Decoded<ReadOnlyMemory<byte>[]>.Faulty($"short answer at data identifier {identifier:X4} ({rest.Length} of {IdentifierLength + length} bytes)");
            }

            if (Bytes.UInt16(rest.Span) != identifier)
            {
                return Decoded<ReadOnlyMemory<byte>[]>.Faulty($"data identifier {Bytes.UInt16(rest.Span):X4} instead of {identifier:X4}");
            }

            records[i] = rest.Slice(IdentifierLength, length);
            rest = rest[(IdentifierLength + length)..];
        }

        return rest.IsEmpty ? records : Decoded<ReadOnlyMemory<byte>[]>.Faulty($"{rest.Length} bytes too many");
    }
}
