using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Where control units are spoken to, one by one and all at once.</summary>
/// <remarks>
/// Source: ISO 15765-4: 11-bit identifiers with 7DF for all and 7E8 to 7EF for the answers of emissions units, or 29-bit
/// ones with 18DB33F1 for all and 18DAF1xx for the answers.
/// </remarks>
internal static class BusAddresses
{
    private const byte TesterAddress = 0xF1;
    private const byte EmissionsGroup = 0x33;
    private const uint EmissionsAnswers = 0x18DA_F100;

    /// <summary>Requests to all units with 29-bit identifiers.</summary>
    public static TransportAddress AllExtended { get; } =
        TransportAddress.Functional(Route.NormalFixedGroup(EmissionsGroup, TesterAddress));

    /// <summary>An identifier as a vehicle type writes it: above 11 bits it is an extended one.</summary>
    public static CanId IdOf(uint id) => id <= CanId.BaseMax ? CanId.Base(id) : CanId.Extended(id);

    /// <summary>The connection with one unit.</summary>
    public static TransportAddress Of(ControlUnit unit) => TransportAddress.Normal(IdOf(unit.Request), IdOf(unit.Response));

    /// <summary>Requests that reach all of these units: one address for each identifier format in use.</summary>
    public static IEnumerable<TransportAddress> ToAll(IReadOnlyList<ControlUnit> units)
    {
        if (units.Any(unit => !IsExtended(unit))) yield return ObdAddresses.All;
        if (units.Any(IsExtended)) yield return AllExtended;
    }

    /// <summary>Whether a unit answers where emissions units do.</summary>
    public static bool IsEmissionsUnit(ControlUnit unit) => IsExtended(unit)
        ? (unit.Response & ~0xFFu) == EmissionsAnswers
        : unit.Response - ObdAddresses.Unit(0).Receive.Id.Value < ObdAddresses.UnitCount;

    private static bool IsExtended(ControlUnit unit) => unit.Response > CanId.BaseMax;
}
