namespace EolSequencer.Wire.Can;

/// <summary>From a raw number to a physical one: raw × factor + offset, in decimal and therefore exact in tenths.</summary>
/// <param name="Factor">Physical units per raw step; not 0.</param>
/// <param name="Offset">The physical value of raw 0.</param>
public sealed record Scaling(decimal Factor, decimal Offset = 0)
{
    /// <summary>Units per raw step.</summary>
    public decimal Factor { get; } = Factor != 0 ? Factor : throw new ArgumentOutOfRangeException(nameof(Factor), "a factor of 0 loses the value");

    /// <summary>The physical value of a raw number.</summary>
    /// <exception cref="OverflowException">The product is beyond the range of decimal numbers.</exception>
    public decimal ToPhysical(decimal raw) => (raw * Factor) + Offset;

    /// <summary>The raw number of a physical value, not rounded.</summary>
    /// <exception cref="OverflowException">The quotient is beyond the range of decimal numbers.</exception>
    public decimal ToRaw(decimal physical) => (physical - Offset) / Factor;
}
