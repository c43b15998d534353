using System.Buffers.Binary;
using System.Numerics;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>
/// What the invented control units make of a seed. It protects nothing; real ones keep theirs secret, and a station
/// gets it from the vehicle maker.
/// </summary>
public static class SeedKey
{
    private const uint Secret = 0x5A17_C3E9;
    private const uint Factor = 0x0019_660D;

    /// <summary>The key of a seed.</summary>
    /// <param name="level">The odd sub-function that asks for the seed.</param>
    /// <param name="seed">Four bytes.</param>
    public static byte[] KeyOf(byte level, ReadOnlySpan<byte> seed)
    {
        var key = new byte[sizeof(uint)];
        BinaryPrimitives.WriteUInt32BigEndian(key, Of(BinaryPrimitives.ReadUInt32BigEndian(seed), level));
        return key;
    }

    internal static bool IsRight(uint seed, byte level, ReadOnlySpan<byte> key) =>
        BinaryPrimitives.ReadUInt32BigEndian(key) == Of(seed, level);

    private static uint Of(uint seed, byte level) => (BitOperations.RotateLeft(seed ^ Secret, level) * Factor) + level;
}
