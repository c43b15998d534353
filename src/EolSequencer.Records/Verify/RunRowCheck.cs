using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Compares the row of a run with the events that it is made from.</summary>
internal sealed class RunRowCheck(RecordConnection connection, FindingList findings)
{
    private readonly Statement _begin = connection.Prepare(
        """
        SELECT run, plant, station, number, station_kind, vin, order_id, vehicle_type, sequence, revision, mode, partial, person,
               planned, begun_utc, retest_of
        FROM run WHERE id = ?
        """);

    private readonly Statement _end = connection.Prepare(
        "SELECT ended_utc, took_us, verdict, interrupted, none, pass, inconclusive, fail, error, conditions FROM run WHERE id = ?");

    public void Check(long row, string run, RunBegun? begun, ConditionsRead? conditions, RunEnded? ended)
    {
        if (begun is null)
        {
            findings.Add(FindingKind.Run, "its first event is missing", run);
            return;
        }

        if (!RunNumber.TryParse(begun.Run, out var number))
        {
            findings.Add(FindingKind.Run, $"its first event gives it the id '{begun.Run}'", run);
            return;
        }

        var expected = RunRow.Of(number.Value, begun);
        Report(run, _begin, CheckBegin(row, expected));
        Report(run, _end, CheckEnd(row, ended is null ? null : RunEndRow.Of(expected.BegunUtc, ended), conditions is null ? null : ConditionsForm.TextOf(conditions.Conditions)));
    }

    private RowCheck CheckBegin(long row, RunRow expected)
    {
        _begin.Int(1, row).Next();
        return new RowCheck(_begin)
            .Text("run", expected.Run).Text("plant", expected.Plant).Text("station", expected.Station).Int("number", expected.Number)
            .Text("station_kind", expected.StationKind).Text("vin", expected.Vin).Text("order_id", expected.Order)
            .Text("vehicle_type", expected.VehicleType).Text("sequence", expected.Sequence).Int("revision", expected.Revision)
            .Text("mode", expected.Mode).Int("partial", expected.IsPartial ? 1 : 0).Text("person", expected.Person)
            .Int("planned", expected.Planned).Text("begun_utc", expected.BegunUtc).Text("retest_of", expected.RetestOf);
    }

    private RowCheck CheckEnd(long row, RunEndRow? expected, string? conditions)
    {
        _end.Int(1, row).Next();
        return new RowCheck(_end)
            .Text("ended_utc", expected?.EndedUtc).Int("took_us", expected?.TookMicroseconds).Text("verdict", expected?.Verdict)
            .Int("interrupted", expected is null ? null : expected.IsInterrupted ? 1 : 0)
            .Int("none", expected?.Numbers.None).Int("pass", expected?.Numbers.Pass).Int("inconclusive", expected?.Numbers.Inconclusive)
            .Int("fail", expected?.Numbers.Fail).Int("error", expected?.Numbers.Error).Text("conditions", conditions);
    }

    private void Report(string run, Statement row, RowCheck check)
    {
        if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"its row in the table run: {differences}", run);
        row.Reset();
    }
}
