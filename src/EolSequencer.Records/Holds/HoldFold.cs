using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Holds;

/// <summary>What an act makes of a hold.</summary>
internal static class HoldFold
{
    public static void Apply(Act act, IRows<HoldRow> holds)
    {
        switch (act)
        {
            case HoldPlaced placed:
                holds.Put(placed.Id, new HoldRow(placed.Id, HoldRow.IsPlaced, placed));
                break;
            case HoldLifted lifted when holds.Find(lifted.Id) is { } hold:
                holds.Put(lifted.Id, hold with { State = HoldRow.IsLifted, Lifted = lifted.Reason });
                break;
        }
    }
}
