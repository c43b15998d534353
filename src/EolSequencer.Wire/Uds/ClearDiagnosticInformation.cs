namespace EolSequencer.Wire.Uds;

/// <summary>Service 14: clears trouble codes and what is stored with them.</summary>
/// <remarks>Source: ISO 14229-1, ClearDiagnosticInformation.</remarks>
public static class ClearDiagnosticInformation
{
    private const ServiceId Service = ServiceId.ClearDiagnosticInformation;

    /// <summary>The group of all codes.</summary>
    public const int AllGroups = 0xFF_FFFF;

    /// <param name="group">0 to <see cref="AllGroups"/>: a group, or one code.</param>
    public static byte[] MakeRequest(int group = AllGroups)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(group, AllGroups);
        return [(byte)Service, (byte)(group >> 16), (byte)(group >> 8), (byte)group];
    }

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out int group)
    {
        var isRight = message.Length == 4 && Bytes.IsRequest(message, Service);
        group = isRight ? (message[1] << 16) | (message[2] << 8) | message[3] : 0;
        return isRight;
    }

    public static byte[] MakeResponse() => [Bytes.PositiveOf(Service)];
}
