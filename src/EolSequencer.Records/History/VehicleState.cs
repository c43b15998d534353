using System.Collections.Immutable;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Parts;

namespace EolSequencer.Records.History;

/// <summary>What a vehicle has come to at each station kind where it was run as a whole.</summary>
/// <param name="Kinds">In the order their newest whole runs began; empty when it was never tested.</param>
/// <param name="Vin">The number that it has by now.</param>
/// <param name="Corrections">Wrong numbers under which some of it was recorded.</param>
/// <param name="Parts">Every part with a serial that was found on it, in the order they were found; replaced ones too.</param>
public sealed record VehicleState(string Vin, ImmutableArray<StationKindState> Kinds, ImmutableArray<PartSerial> Parts, ImmutableArray<VinCorrection> Corrections)
{
    /// <summary>Where it stands at a station kind; null when no whole run was begun there.</summary>
    public StationKindState? At(string stationKind) => Kinds.FirstOrDefault(kind => kind.StationKind == stationKind);

    /// <summary>True when there is a station kind and it has passed at each; whether the route is complete, the plant knows.</summary>
    public bool HasPassed => !Kinds.IsEmpty && Kinds.All(kind => kind.HasPassed);
}
