using System.Collections.Immutable;

namespace EolSequencer.Records.History;

/// <summary>How a vehicle stands that is about to be run so that it counts.</summary>
/// <param name="IsReleased">Whether it was released and has not returned yet.</param>
/// <param name="Before">Its newest run; null: it has none.</param>
/// <param name="Changed">What its order says otherwise than in that run, for people.</param>
public sealed record VehicleArrival(bool IsReleased, string? Before, ImmutableArray<string> Changed)
{
    internal static VehicleArrival Of(Administration.IActView view, Model.Vehicles.Order order, string? begun = null)
    {
        var vin = order.Vin.Text;
        var before = view.RunsBegun(new Reading.RunFilter { Vin = vin, Before = begun, Most = 1 }).FirstOrDefault();
        return new VehicleArrival(
            new Correcting.VinTrail(view.Corrections).All(vin).Any(one => view.Releases.Find(one)?.State == Release.ReleaseRow.IsReleased),
            before?.Run,
            before is null ? [] : OrderDifference.Of(before.Order, order));
    }
}
