using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Nonconformities;

/// <summary>What an act makes of a nonconformity.</summary>
internal static class NonconformityFold
{
    public const string Rework = "rework";

    public const string Repair = "repair";

    public static void Apply(Act act, string? by, IRows<NonconformityRow> rows)
    {
        switch (act)
        {
            case NonconformityOpened opened:
                rows.Put(opened.Id, new NonconformityRow(
                    opened.Id, opened.Vin, NonconformityStates.Open, opened.Code, [], opened.Finding, opened.Place, opened.Note, by));
                break;
            case NonconformityRetested retested:
                Change(rows, retested.Id, row => row with { State = After(row, retested.Passed), Finding = retested.Finding });
                break;
            case NonconformityInspected inspected:
                Change(rows, inspected.Id, row => row with { State = After(row, inspected.Passed) });
                break;
            case RepairDone done:
                Change(rows, done.Id, row => row with
                {
                    State = done.Kind == Repair ? NonconformityStates.Repaired : NonconformityStates.Reworked,
                    RepairedBy = by,
                    Parts = row.Parts.AddRange(done.Parts),
                });
                break;
            case ConcessionGiven given:
                Change(rows, given.Id, row => row with { State = NonconformityStates.Conceded, Concession = given.Reason });
                break;
        }
    }

    private static string After(NonconformityRow row, bool passed) => (row.State, passed) switch
    {
        (NonconformityStates.Repaired or NonconformityStates.WantsConcession, true) => NonconformityStates.WantsConcession,
        (_, true) => NonconformityStates.Closed,
        (_, false) => NonconformityStates.Open,
    };

    private static void Change(IRows<NonconformityRow> rows, string id, Func<NonconformityRow, NonconformityRow> change)
    {
        if (rows.Find(id) is { } row) rows.Put(id, change(row));
    }
}
