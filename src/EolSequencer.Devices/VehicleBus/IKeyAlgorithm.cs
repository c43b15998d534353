namespace EolSequencer.Devices.VehicleBus;

/// <summary>Computes the key that opens a security level of a control unit from its seed (ISO 14229-1, service 27).</summary>
public interface IKeyAlgorithm
{
    /// <summary>The key; null when the station has none for this unit and level.</summary>
    /// <param name="unit">The control unit's name.</param>
    /// <param name="level">The odd sub-function that asks for the seed.</param>
    /// <param name="seed">As the unit sent it, at least one byte, not all zero.</param>
    byte[]? KeyOf(string unit, byte level, ReadOnlySpan<byte> seed);
}
