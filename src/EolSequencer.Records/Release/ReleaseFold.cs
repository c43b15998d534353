using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.Nonconformities;

namespace EolSequencer.Records.Release;

/// <summary>What an act makes of a release.</summary>
internal static class ReleaseFold
{
    public static void Apply(Act act, string? by, IRows<ReleaseRow> releases, VinTrail trail)
    {
        switch (act)
        {
            case ReleaseSigned signed:
                releases.Put(signed.Vin, new ReleaseRow(signed.Vin, ReleaseRow.IsReleased, signed.Route, signed.Runs, by));
                break;
            case NonconformityOpened opened:
                Return(releases, trail.All(opened.Vin));
                break;
            case VehicleReturned returned:
                Return(releases, trail.All(returned.Vin));
                break;
            case VinCorrected corrected:
                // What was signed spoke of other runs than those that are the vehicle's now.
                Return(releases, trail.All(corrected.From).Union(trail.All(corrected.To)));
                break;
        }
    }

    private static void Return(IRows<ReleaseRow> releases, IEnumerable<string> vins)
    {
        foreach (var vin in vins)
        {
            if (releases.Find(vin) is { State: ReleaseRow.IsReleased } release) releases.Put(vin, release with { State = ReleaseRow.IsReturned });
        }
    }
}
