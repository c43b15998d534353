using System.Collections.Immutable;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Vehicles;

/// <summary>What is known of one vehicle before it is built; checked against its vehicle type.</summary>
/// <param name="Id">The order's own number.</param>
/// <param name="VehicleType">Id of the vehicle type.</param>
/// <param name="Options">A value for every option of the type.</param>
/// <param name="Facts">A value for every fact of the type; indexed facts under <c>name[index]</c>.</param>
public sealed record Order(
    string Id,
    Vin Vin,
    string VehicleType,
    ImmutableSortedDictionary<string, Value> Options,
    ImmutableSortedDictionary<string, Value> Facts);
