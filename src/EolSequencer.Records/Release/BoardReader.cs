using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;

namespace EolSequencer.Records.Release;

/// <summary>Reads which vehicles wait for their release, and for whom.</summary>
internal static class BoardReader
{
    /// <param name="most">At most so many vehicles, from 1.</param>
    /// <param name="routeOf">The station kinds that a vehicle must pass, by its newest run that counts.</param>
    public static ReleaseBoard Read(IActView view, int most, Func<RunBegun, ImmutableArray<string>> routeOf)
    {
        var waiting = Waiting(view).ToList();
        var obstacles = new Obstacles(view);
        return new ReleaseBoard(waiting.Count, [.. waiting.Take(most).Select(vin => Of(view, VehicleStanding.Of(view, vin), obstacles, routeOf))]);
    }

    /// <summary>The vehicles by the numbers that they have by now, in the order of their first runs.</summary>
    private static IEnumerable<string> Waiting(IActView view)
    {
        var numbers = view.NumbersNotReleased();
        if (view.Corrections.Count == 0) return numbers;
        var trail = new VinTrail(view.Corrections);
        return numbers.Select(trail.Current).Distinct().Where(vin => view.Releases.Find(vin)?.State != ReleaseRow.IsReleased);
    }

    private static WaitingVehicle Of(IActView view, VehicleStanding vehicle, Obstacles obstacles, Func<RunBegun, ImmutableArray<string>> routeOf)
    {
        var newest = vehicle.Newest!;
        return new WaitingVehicle(
            vehicle.Vin, newest.Order.VehicleType, newest.Order.Id, vehicle.Begun[^1].Wall, vehicle.Begun[0].Wall, vehicle.ReleaseState(view), [.. obstacles.Of(vehicle, vehicle.Vin, routeOf(newest))]);
    }
}
