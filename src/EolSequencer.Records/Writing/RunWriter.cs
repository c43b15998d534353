using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Writing;

/// <summary>
/// Writes one run: each event with its link, the tables read from, and the ledger at both ends. The caller has a transaction
/// open and accepts the event once it counts.
/// </summary>
internal sealed class RunWriter
{
    private readonly RecordWriter _record;
    private readonly RunNumber _run;
    private readonly ChainWriter _chain = new();
    private long _row;

    /// <summary>A run that is about to begin.</summary>
    public RunWriter(RecordWriter record, RunNumber run)
    {
        _record = record;
        _run = run;
    }

    /// <summary>A run that goes on.</summary>
    /// <param name="row">Number of its row.</param>
    /// <param name="last">Number of its last event.</param>
    /// <param name="head">Link of its last event.</param>
    public RunWriter(RecordWriter record, RunNumber run, long row, int last, ReadOnlySpan<byte> head)
        : this(record, run)
    {
        _row = row;
        Count = last;
        _chain.GoOnFrom(head);
    }

    /// <summary>Number of events that count.</summary>
    public int Count { get; private set; }

    /// <summary>True once the last event counts; nothing can follow.</summary>
    public bool HasEnded { get; private set; }

    /// <summary>Writes the next event. One that does not fit the run so far is a broken assumption and throws.</summary>
    /// <exception cref="JournalFault">The run has more events than a run can have.</exception>
    public void Add(RunEvent next)
    {
        Require(next);
        var series = next is SeriesRecorded recorded ? SeriesContent.Of(recorded.Points) : null;
        EventForm.Write(_chain.Begin(), next, series);
        _chain.End();
        var begun = next as RunBegun;
        if (begun is not null) _row = _record.Runs.Begin(_run, begun);
        var key = EventKey.Of(_row, next.N);
        if (next is Judged judged)
        {
            _record.Events.Add(key, _chain.Hash, _chain.Bytes, judged);
            _record.Criteria.Add(key, judged);
            _record.Parts.Add(key, _row, judged);
            return;
        }

        _record.Events.Add(key, _chain.Hash, _chain.Bytes);
        if (series is not null) _record.Series.Add(key, series);
        if (begun is not null) Begin(begun);
        if (next is ConditionsRead read) _record.Runs.Conditions(_row, read);
        if (next is RunEnded ended) End(ended);
    }

    /// <summary>The event written last counts.</summary>
    public void Accept(RunEvent written)
    {
        _chain.Accept();
        Count = written.N;
        HasEnded = written is RunEnded;
    }

    private void Begin(RunBegun begun)
    {
        foreach (var source in begun.Sources) _record.Sources.Add(source);
        var first = Convert.ToHexStringLower(_chain.Hash);
        _record.Ledger.Append(n => new LedgerEntry.RunBegun(n, begun.Run, first), _record.Key);
        _record.Arrivals.Write(begun);
    }

    private void End(RunEnded ended)
    {
        _record.Runs.End(_row, ended);
        var last = Convert.ToHexStringLower(_chain.Hash);
        _record.Ledger.Append(n => new LedgerEntry.RunEnded(n, _run.ToString(), last, ended.N, ended.RollUp.Verdict), _record.Key);
        _record.Findings.Write(_row, ended);
    }

    private void Require(RunEvent next)
    {
        if (HasEnded) throw new InvalidOperationException($"run {_run} has ended; event {next.N} comes too late");
        if (next.N != Count + 1) throw new InvalidOperationException($"event {next.N} of run {_run} came where {Count + 1} was due");
        if (next.N > EventKey.MostEvents) throw new JournalFault($"run {_run} has {EventKey.MostEvents} events, the most there can be");
        var begun = next as RunBegun;
        if (begun is null == (Count == 0)) throw new InvalidOperationException($"a run begins once, with its first event (run {_run})");
        if (begun is not null && (begun.Run != _run.ToString() || begun.Station != _run.Station))
        {
            throw new InvalidOperationException($"the event is of run {begun.Run} at {begun.Station}, the journal is that of run {_run}");
        }
    }
}
