using System.Collections.Immutable;
using System.Text.Json.Serialization;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Release;

/// <summary>Whether a vehicle may be released, and what speaks against it.</summary>
/// <param name="Obstacles">What keeps it from being released; empty: nothing.</param>
/// <param name="State"><c>released</c>, <c>returned</c> (released, and since then run again, a nonconformity opened, or the number corrected), or null: never released.</param>
/// <param name="Runs">The newest whole run at each station kind of the route that it was run at.</param>
public sealed record Readiness(string Vin, ImmutableArray<string> Route, ImmutableArray<string> Runs, [property: JsonIgnore] ImmutableArray<Obstacle> Obstacles, string? State)
{
    /// <summary>What speaks against it, for people, one line each.</summary>
    public ImmutableArray<string> Against => [.. Obstacles.Select(one => one.Text)];

    /// <summary>True when nothing speaks against it.</summary>
    public bool IsReady => Obstacles.IsEmpty;

    internal static Readiness Of(IActView view, string vin, ImmutableArray<string> route)
    {
        var vehicle = VehicleStanding.Of(view, vin);
        return new Readiness(
            vin, route, [.. vehicle.Kinds.Where(kind => route.Contains(kind.StationKind)).Select(kind => kind.Run)], [.. new Obstacles(view).Of(vehicle, vin, route)], vehicle.ReleaseState(view));
    }
}
