namespace EolSequencer.Wire.Uds;

/// <summary>Service 27: unlocks a level by answering a seed with a key.</summary>
/// <remarks>
/// Source: ISO 14229-1, SecurityAccess. Levels are odd, 1 to 0x41 and beyond; the seed of a level is asked for with its
/// number, the key is sent with the next one.
/// </remarks>
public static class SecurityAccess
{
    private const ServiceId Service = ServiceId.SecurityAccess;

    /// <param name="Level">The odd number of the level.</param>
    /// <param name="IsKey">False: a seed is asked for; true: a key is sent.</param>
    /// <param name="Data">The key, or further data with a request for a seed; often empty there.</param>
    /// <param name="SuppressPositive">Whether a positive response may stay away.</param>
    public readonly record struct Request(byte Level, bool IsKey, ReadOnlyMemory<byte> Data, bool SuppressPositive);

    public static byte[] MakeSeedRequest(byte level) => [(byte)Service, Checked(level)];

    public static byte[] MakeKeyRequest(byte level, ReadOnlySpan<byte> key) =>
        Bytes.Join([(byte)Service, (byte)(Checked(level) + 1)], key);

    /// <summary>False: the length is wrong (code 13).</summary>
    public static bool TryReadRequest(ReadOnlyMemory<byte> message, out Request request)
    {
        var bytes = message.Span;
        request = default;
        if (bytes.Length < 2 || !Bytes.IsRequest(bytes, Service))
        {
            return false;
        }

        var number = (byte)(bytes[1] & SubFunction.ValueBits);
        var isKey = (number & 1) == 0;
        request = new Request((byte)(isKey ? number - 1 : number), isKey, message[2..], (bytes[1] & SubFunction.SuppressBit) != 0);
        return number != 0 && (!isKey || bytes.Length > 2);
    }

    public static byte[] MakeSeedResponse(byte level, ReadOnlySpan<byte> seed) =>
        Bytes.Join([Bytes.PositiveOf(Service), Checked(level)], seed);

    public static byte[] MakeKeyResponse(byte level) => [Bytes.PositiveOf(Service), (byte)(Checked(level) + 1)];

    /// <summary>The seed, at least one byte.</summary>
    public static Decoded<ReadOnlyMemory<byte>> ReadSeed(ReadOnlyMemory<byte> message) =>
        Bytes.HeadFault(message.Span, Service, least: 3) is { } fault ? Decoded<ReadOnlyMemory<byte>>.Faulty(fault) : message[2..];

    /// <summary>Whether a seed says that the level is open already, so that no key is to be sent: all its bytes are zero.</summary>
    public static bool IsUnlocked(ReadOnlySpan<byte> seed) => seed.Length > 0 && !seed.ContainsAnyExcept((byte)0);

    private static byte Checked(byte level) => level is > 0 and < SubFunction.ValueBits && (level & 1) == 1
        ? level
        : throw new ArgumentOutOfRangeException(nameof(level), level, "security levels are odd, 1 to 125");
}
