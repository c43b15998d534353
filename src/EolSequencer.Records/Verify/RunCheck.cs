using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Walks one run: numbers and links of its events, what the ledger says of it, and everything made from its events.</summary>
internal sealed class RunCheck(RecordConnection connection, LedgerPicture ledger, HashSet<string> sources, FindingList findings)
{
    private readonly Statement _events = connection.Prepare($"SELECT id, hash, bytes, {StepCheck.Columns} FROM event WHERE id BETWEEN ? AND ? ORDER BY id");
    private readonly ChainReader _chain = new();
    private readonly RunRowCheck _runRow = new(connection, findings);
    private readonly StepCheck _steps = new(connection, findings);
    private readonly PartSerialCheck _parts = new(connection, findings);
    private readonly AttachmentCheck _attachments = new(connection, sources, findings);
    private long _lastBegun;
    private string _run = "";
    private int _last;
    private string _firstLink = "";
    private RunBegun? _begun;
    private ConditionsRead? _conditions;
    private RunEnded? _ended;

    /// <summary>Events walked in all runs.</summary>
    public long Events { get; private set; }

    /// <summary>Walks a run.</summary>
    /// <param name="row">Number of its row.</param>
    /// <param name="run">Its id, as the row says.</param>
    public void Walk(long row, string run)
    {
        (_run, _last, _firstLink, _begun, _conditions, _ended) = (run, 0, "", null, null, null);
        _steps.Begin();
        _parts.Begin();
        _attachments.Begin(run, row);
        _chain.Begin();
        _events.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row));
        while (_events.Next()) WalkEvent();
        _steps.End(run, row);
        _parts.End(run, row);
        _attachments.End();
        _runRow.Check(row, run, _begun, _conditions, _ended);
        CompareWithLedger();
    }

    private void WalkEvent()
    {
        Events++;
        var n = EventKey.NumberOf(_events.Int(0));
        var followsGap = n != _last + 1;
        if (followsGap) Report(_last + 1, n - 1 == _last + 1 ? "it is missing" : $"it and all up to event {n - 1} are missing");
        var follows = _chain.Next(_events.Blob(2), _events.Blob(1));
        if (!follows && !followsGap) Report(n, "its bytes and the link before do not give its link: it was changed, moved or added");
        if (_firstLink.Length == 0) _firstLink = Convert.ToHexStringLower(_events.Blob(1));
        _last = n;
        try
        {
            Compare(n, EventForm.Read(_events.Blob(2).ToArray(), _attachments));
        }
        catch (FormatException fault)
        {
            Report(n, $"it cannot be read: {fault.Message}");
        }
    }

    private void Compare(int n, RunEvent found)
    {
        if (found.N != n) Report(n, $"its bytes say that it is event {found.N}");
        if (_ended is not null) Report(n, "it stands behind the end of the run");
        _steps.Check(_run, found, _events, column: 3);
        _parts.Note(found, _events.Int(0));
        switch (found)
        {
            case RunBegun begun:
                if (n != 1) Report(n, "the run begins a second time");
                _begun = begun;
                break;
            case ConditionsRead read:
                _conditions = read;
                break;
            case RunEnded ended:
                _ended = ended;
                break;
        }
    }

    private void CompareWithLedger()
    {
        if (!ledger.Begun.TryGetValue(_run, out var begun))
        {
            if (ledger.IsWhole) findings.Add(FindingKind.Run, "the ledger does not know it: it was added, or its entry is gone", _run);
        }
        else
        {
            if (begun.First != _firstLink) findings.Add(FindingKind.Run, "its first event is not the one in the ledger", _run);
            if (begun.N < _lastBegun) findings.Add(FindingKind.Run, "it stands behind a run that the ledger has after it", _run);
            _lastBegun = begun.N;
        }

        if (ledger.Ended.TryGetValue(_run, out var ended))
        {
            if (ended.Events != _last) findings.Add(FindingKind.Run, $"it has {_last} events, the ledger says {ended.Events}", _run);
            if (ended.Last != Convert.ToHexStringLower(_chain.Head)) findings.Add(FindingKind.Run, "its last event is not the one in the ledger", _run);
            if (_ended is not null && ended.Verdict != _ended.RollUp.Verdict)
            {
                findings.Add(FindingKind.Run, $"its last event says {_ended.RollUp.Verdict.Word()}, the ledger {ended.Verdict.Word()}", _run);
            }
        }
        else if (_ended is not null)
        {
            findings.Add(FindingKind.Run, "it has ended, and the ledger does not know: it is not sealed", _run);
        }
    }

    private void Report(int n, string text) => findings.Add(FindingKind.Event, text, _run, n);
}
