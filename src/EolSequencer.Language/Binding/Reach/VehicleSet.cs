using System.Numerics;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>Some of the possible vehicles of a type, by their number. Immutable.</summary>
internal sealed class VehicleSet
{
    private readonly ulong[] _bits;

    private VehicleSet(ulong[] bits) => _bits = bits;

    public static VehicleSet None(int count) => new(new ulong[(count + 63) / 64]);

    /// <summary>The vehicles from 0 up to, not including, <paramref name="count"/> for which a condition holds.</summary>
    public static VehicleSet Where(int count, Func<int, bool> holds)
    {
        var bits = new ulong[(count + 63) / 64];
        for (var number = 0; number < count; number++)
        {
            if (holds(number)) bits[number / 64] |= 1UL << (number % 64);
        }

        return new VehicleSet(bits);
    }

    public bool IsEmpty => !_bits.AsSpan().ContainsAnyExcept(0UL);

    /// <summary>The lowest number in the set, or null.</summary>
    public int? First
    {
        get
        {
            var word = _bits.AsSpan().IndexOfAnyExcept(0UL);
            return word < 0 ? null : word * 64 + BitOperations.TrailingZeroCount(_bits[word]);
        }
    }

    public bool Contains(int number) => (_bits[number / 64] >> (number % 64) & 1) != 0;

    public VehicleSet And(VehicleSet other) => Combine(other, static (left, right) => left & right);

    public VehicleSet Or(VehicleSet other) => Combine(other, static (left, right) => left | right);

    /// <summary>What is in this set and not in the other.</summary>
    public VehicleSet Without(VehicleSet other) => Combine(other, static (left, right) => left & ~right);

    private VehicleSet Combine(VehicleSet other, Func<ulong, ulong, ulong> combine)
    {
        var bits = new ulong[_bits.Length];
        for (var word = 0; word < bits.Length; word++) bits[word] = combine(_bits[word], other._bits[word]);
        return new VehicleSet(bits);
    }
}
