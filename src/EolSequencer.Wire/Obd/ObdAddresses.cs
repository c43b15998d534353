using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Obd;

/// <summary>Where emissions control units are spoken to with 11-bit identifiers.</summary>
/// <remarks>
/// Source: ISO 15765-4. Every unit that has something to say answers a request to all; the answers interleave on the
/// bus, so each unit needs a receiver of its own. A unit that does not know a parameter says nothing.
/// </remarks>
public static class ObdAddresses
{
    /// <summary>The most units there can be.</summary>
    public const int UnitCount = 8;

    private const uint AllUnits = 0x7DF;
    private const uint FirstRequest = 0x7E0;
    private const uint FirstResponse = 0x7E8;

    /// <summary>Requests to all units.</summary>
    public static TransportAddress All { get; } = TransportAddress.Functional(new Route(CanId.Base(AllUnits)));

    /// <summary>The connection of a tester with one unit.</summary>
    /// <param name="unit">0 to 7; 0 is the engine's.</param>
    public static TransportAddress Unit(int unit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(unit);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(unit, UnitCount);
        return TransportAddress.Normal(CanId.Base(FirstRequest + (uint)unit), CanId.Base(FirstResponse + (uint)unit));
    }
}
