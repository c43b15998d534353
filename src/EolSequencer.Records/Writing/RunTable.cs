using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes the row of a run: when it begins, and once more when it has ended.</summary>
internal sealed class RunTable(RecordConnection connection)
{
    private readonly Statement _next = connection.Prepare("SELECT coalesce(max(id), 0) + 1 FROM run");

    private readonly Statement _begin = connection.Prepare(
        """
        INSERT INTO run (id, run, plant, station, number, station_kind, vin, order_id, vehicle_type, sequence, revision,
                         mode, partial, person, planned, begun_utc, retest_of)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """);

    private readonly Statement _begunAt = connection.Prepare("SELECT begun_utc FROM run WHERE id = ?");

    private readonly Statement _end = connection.Prepare(
        """
        UPDATE run SET ended_utc = ?, took_us = ?, verdict = ?, interrupted = ?, none = ?, pass = ?, inconclusive = ?, fail = ?, error = ?
        WHERE id = ?
        """);

    private readonly Statement _conditions = connection.Prepare("UPDATE run SET conditions = ? WHERE id = ?");

    private readonly Statement _lastNumber = connection.Prepare("SELECT coalesce(max(number), 0) FROM run WHERE station = ?");

    private readonly Statement _unfinished = connection.Prepare("SELECT id FROM run WHERE run = ? AND ended_utc IS NULL");

    /// <summary>Adds a run and gives the number of its row.</summary>
    public long Begin(RunNumber run, RunBegun begun)
    {
        _next.Next();
        var id = _next.Int(0);
        _next.Reset();
        var row = RunRow.Of(run, begun);
        _begin.Int(1, id).Text(2, row.Run).Text(3, row.Plant).Text(4, row.Station).Int(5, row.Number).Text(6, row.StationKind)
            .Text(7, row.Vin).Text(8, row.Order).Text(9, row.VehicleType).Text(10, row.Sequence).Int(11, row.Revision)
            .Text(12, row.Mode).Int(13, row.IsPartial ? 1 : 0).Text(14, row.Person).Int(15, row.Planned).Text(16, row.BegunUtc).Text(17, row.RetestOf)
            .Run();
        return id;
    }

    public void Conditions(long id, ConditionsRead read) => _conditions.Text(1, ConditionsForm.TextOf(read.Conditions)).Int(2, id).Run();

    public void End(long id, RunEnded ended)
    {
        _begunAt.Int(1, id).Next();
        var row = RunEndRow.Of(_begunAt.Text(0), ended);
        _begunAt.Reset();
        var numbers = row.Numbers;
        _end.Text(1, row.EndedUtc).Int(2, row.TookMicroseconds).Text(3, row.Verdict).Int(4, row.IsInterrupted ? 1 : 0)
            .Int(5, numbers.None).Int(6, numbers.Pass).Int(7, numbers.Inconclusive).Int(8, numbers.Fail).Int(9, numbers.Error)
            .Int(10, id)
            .Run();
    }

    /// <summary>The greatest number of a station's runs; 0 when it has none.</summary>
    public long LastNumber(string station)
    {
        _lastNumber.Text(1, station).Next();
        var number = _lastNumber.Int(0);
        _lastNumber.Reset();
        return number;
    }

    /// <summary>Row of a run that has begun and not ended; null when there is no such run.</summary>
    public long? FindUnfinished(RunNumber run)
    {
        if (!_unfinished.Text(1, run.ToString()).Next()) return null;
        var id = _unfinished.Int(0);
        _unfinished.Reset();
        return id;
    }
}
