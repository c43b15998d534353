using System.Collections.Immutable;

namespace EolSequencer.Model.Devices;

/// <summary>What a sequence may ask of a class of equipment, whatever adapter serves it.</summary>
/// <param name="Id">Unique in the plant, such as <c>dc-meter</c>; <c>vehicle-bus</c> is described by the vehicle type.</param>
/// <param name="IsExclusive">True: one exchange at a time, others queue.</param>
public sealed record DeviceKind(
    string Id,
    bool IsExclusive,
    ImmutableSortedDictionary<string, ChannelDescription> Channels,
    ImmutableSortedDictionary<string, ActionDescription> Actions)
{
    /// <summary>The id under which a vehicle type describes what its own bus offers.</summary>
    public const string VehicleBus = "vehicle-bus";
}
