using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes what the end of a run says about nonconformities, in the transaction of its last event.</summary>
internal sealed class RunFindingWriter(RecordConnection connection, LedgerWriter ledger, SealingKey key)
{
    private readonly ActWriter _acts = new(ledger, key);
    private SqliteTables? _tables;

    /// <summary>Looks at a run whose row is complete.</summary>
    /// <param name="row">Number of its row.</param>
    /// <exception cref="JournalFault">What is kept of the vehicle cannot be read.</exception>
    public void Write(long row, RunEnded ended)
    {
        try
        {
            WriteActs(row, ended);
        }
        catch (FormatException fault)
        {
            throw new JournalFault($"cannot tell what run row {row} says about its vehicle: {fault.Message}; run verify", fault);
        }
    }

    private void WriteActs(long row, RunEnded ended)
    {
        using var run = new Statement(connection.Connection.Handle!, "SELECT run, vin, station_kind, mode, partial, retest_of, person, ended_utc FROM run WHERE id = ?");
        run.Int(1, row).Next();
        if (run.Text(3) != RunMode.Production.Word()) return;
        var (name, vin, kind, person, at) = (run.Text(0), run.Text(1), run.Text(2), run.TextOrNull(6), UtcText.Read(run.Text(7)));
        var isWhole = run.Int(4) == 0;
        var retestOf = run.TextOrNull(5);
        var last = LastOf(row, ended);
        _tables ??= new SqliteTables(connection);
        var vins = new VinTrail(_tables.Corrections).All(vin);
        var known = _tables.Nonconformities.OfVehicle(vins).ToList();
        var failed = last.Exists(judged => judged.Counted == Verdict.Fail);
        if (!failed && !known.Any(one => one.IsOpen)) return;
        var showsGood = isWhole || (retestOf is not null && retestOf == NewestWhole(vins, kind));
        var findings = new RunFindings(vin, kind, name, showsGood);
        foreach (var act in findings.Acts(last, known, _tables.Nonconformities.Count).ToList()) _acts.Append(act, person, at, _tables);
    }

    /// <summary>What was found last for each step that counts.</summary>
    private List<Judged> LastOf(long row, RunEnded ended)
    {
        using var steps = new Statement(
            connection.Connection.Handle!,
            "SELECT bytes FROM event WHERE id IN (SELECT max(id) FROM event WHERE id BETWEEN ? AND ? AND step IS NOT NULL GROUP BY step) ORDER BY id");
        steps.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row));
        var last = new List<Judged>();
        while (steps.Next()) last.Add((Judged)EventForm.Read(steps.Blob(0).ToArray(), NoAttachments.Only));
        return last.FindAll(judged => !ended.NotCounted.Contains(judged.Step));
    }

    private string? NewestWhole(IEnumerable<string> vins, string kind) => vins.Select(vin => NewestWhole(vin, kind)).Where(newest => newest.Id > 0).OrderBy(newest => newest.Id).LastOrDefault().Run;

    private (long Id, string? Run) NewestWhole(string vin, string kind)
    {
        using var newest = new Statement(
            connection.Connection.Handle!, "SELECT id, run FROM run WHERE vin = ? AND station_kind = ? AND mode = 'production' AND partial = 0 ORDER BY id DESC LIMIT 1");
        return newest.Text(1, vin).Text(2, kind).Next() ? (newest.Int(0), newest.Text(1)) : default;
    }
}
