using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>
/// Writes the runs of a rehearsal on a thread of its own, one transaction for each, in the order of their numbers even when
/// several go on at once. A run is kept whole or not at all.
/// </summary>
/// <remarks>At most <see cref="MostReady"/> finished runs wait to be written; then whoever completes another one waits.</remarks>
public sealed class BatchWriter : IDisposable
{
    /// <summary>Finished runs that may wait to be written.</summary>
    public const int MostReady = 8;

    /// <summary>Runs that may have begun while the oldest has not ended. Never interleave more of them on one thread.</summary>
    public const int MostAhead = 64;

    private readonly RecordWriter _record;
    private readonly Func<RunNumber> _nextRun;
    private readonly HandOver<BatchJournal> _finished = new(MostReady, MostAhead);
    private readonly Lock _numbering = new();
    private readonly Thread _thread;
    private volatile JournalFault? _fault;

    internal BatchWriter(RecordWriter record, Func<RunNumber> nextRun)
    {
        (_record, _nextRun) = (record, nextRun);
        _thread = new Thread(WriteAll) { Name = "record writer", IsBackground = true };
        _thread.Start();
    }

    /// <summary>Begins a run. From any thread.</summary>
    public BatchJournal BeginRun()
    {
        lock (_numbering)
        {
            return new BatchJournal(this, _finished.Announce(), _nextRun());
        }
    }

    /// <summary>Waits until every completed run is written, and ends the batch.</summary>
    /// <exception cref="JournalFault">A run could not be written; neither were those after it.</exception>
    public void Complete()
    {
        Dispose();
        ThrowIfFaulty();
    }

    public void Dispose()
    {
        _finished.Close();
        _thread.Join();
    }

    internal void ThrowIfFaulty()
    {
        if (_fault is { } fault) throw new JournalFault(fault.Message, fault);
    }

    internal void Finish(BatchJournal run, bool isWanted) => _finished.Put(run.Number, isWanted ? run : null);

    private void WriteAll()
    {
        using (_record)
        {
            // After a fault the rest is taken and dropped, so that nobody waits for a writer that has given up.
            while (_finished.Take() is { } run)
            {
                if (_fault is null) TryWrite(run);
            }
        }
    }

    private void TryWrite(BatchJournal run)
    {
        try
        {
            Write(run);
        }
        catch (SqliteException fault)
        {
            _fault = new JournalFault(_record.Describe(fault), fault);
        }
        catch (Exception fault)
        {
            // On this thread nobody else could report it.
            _fault = new JournalFault($"cannot write run {run.Run}: {fault.Message}", fault);
        }
    }

    private void Write(BatchJournal run)
    {
        _record.Begin();
        try
        {
            var writer = new RunWriter(_record, run.Id);
            foreach (var next in run.Events)
            {
                writer.Add(next);
                writer.Accept(next);
            }

            _record.Commit();
        }
        catch
        {
            _record.Rollback();
            throw;
        }
    }
}
