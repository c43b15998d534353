using System.Collections.Immutable;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>A vehicle type with what only its sequences need: the limits before they have a unit, and the tables these come from.</summary>
internal sealed record BoundVehicleType(VehicleType Type, ImmutableDictionary<string, LimitDefinition> Limits, ImmutableArray<SourceCopy> Tables);
