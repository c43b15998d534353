using EolSequencer.Records.Administration;
using EolSequencer.Records.Nonconformities;

namespace EolSequencer.Records.Release;

/// <summary>What an act makes of a release.</summary>
internal static class ReleaseFold
{
    public static void Apply(Act act, string? by, IRows<ReleaseRow> releases)
    {
        switch (act)
        {
            case ReleaseSigned signed:
                releases.Put(signed.Vin, new ReleaseRow(signed.Vin, ReleaseRow.IsReleased, signed.Route, signed.Runs, by));
                break;
            case NonconformityOpened opened when releases.Find(opened.Vin) is { } release:
                releases.Put(opened.Vin, release with { State = ReleaseRow.IsReturned });
                break;
        }
    }
}
