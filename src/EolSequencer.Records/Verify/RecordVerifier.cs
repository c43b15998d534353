using System.Collections.Immutable;
using Dapper;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Witnessing;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>
/// Walks a record and reports everything that is not as it was written. It sees the record as it was at one moment, whatever
/// is written meanwhile.
/// </summary>
internal sealed class RecordVerifier(RecordConnection connection)
{
    /// <summary>Entries of the ledger that a crash can have touched, generously.</summary>
    private const int TailEntries = 200;

    private readonly FindingList _findings = new();
    private readonly HashSet<string> _runs = [];
    private readonly ImmutableArray<string>.Builder _unfinished = ImmutableArray.CreateBuilder<string>();
    private LedgerPicture _ledger = new(isWhole: true);
    private long _events;

    /// <summary>Walks everything.</summary>
    /// <param name="witness">What was kept elsewhere of the ledger; null: nothing is compared.</param>
    public VerifyReport VerifyAll(LedgerWitness? witness = null) => Walk(() =>
    {
        // The quick check of the engine does not compare indexes with their tables: a run could no longer be found by its id.
        foreach (var trouble in connection.Connection.Query<string>("PRAGMA integrity_check").Where(line => line != "ok"))
        {
            _findings.Add(FindingKind.Database, trouble);
        }

        SchemaCheck.Walk(connection, _findings);
        _ledger = new LedgerCheck(connection, _findings).Walk(after: 0);
        if (witness is not null) new WitnessCheck(connection, _findings).Compare(witness);
        KeyCheck.Walk(connection, _ledger, _findings);
        ActTableCheck.Walk(connection, _ledger, _findings);
        DraftFileCheck.Walk(connection, _ledger, _findings);
        WalkRuns("SELECT id, run, ended_utc FROM run ORDER BY id");
        OrphanCheck.Walk(connection, _ledger, _runs, _findings);
    });

    /// <summary>Walks the end of the ledger, the runs that have not ended and the newest one.</summary>
    public VerifyReport VerifyTail() => Walk(() =>
    {
        _ledger = new LedgerCheck(connection, _findings).Walk(Math.Max(0, LedgerReader.Head(connection).Count - TailEntries));
        WalkRuns("SELECT id, run, ended_utc FROM run WHERE ended_utc IS NULL OR id = (SELECT max(id) FROM run) ORDER BY id");
    });

    private void WalkRuns(string select)
    {
        var check = new RunCheck(connection, _ledger, SourceCheck.Walk(connection, _findings), _findings);
        var runs = connection.Prepare(select);
        while (runs.Next())
        {
            if (runs.TextOrNull(1) is not { } run)
            {
                _findings.Add(FindingKind.Table, $"run row {runs.Int(0)} has no id of a run");
                continue;
            }

            _runs.Add(run);
            if (runs.IsNull(2)) _unfinished.Add(run);
            check.Walk(runs.Int(0), run);
        }

        _events = check.Events;
    }

    private VerifyReport Walk(Action walk)
    {
        connection.HoldMoment();
        try
        {
            walk();
        }
        catch (SqliteException fault)
        {
            _findings.Add(FindingKind.Database, $"the walk ended early: {fault.Message}");
        }

        return new VerifyReport(_findings.Kept, _findings.Count, _unfinished.ToImmutable(), _ledger.Head, _runs.Count, _events);
    }
}
