using EolSequencer.Model.Ports;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Stations;

/// <summary>A station that belongs to this process: it numbers the station's runs and gives each its journal.</summary>
public sealed class StationHold : IDisposable
{
    private readonly StationLock _lock;
    private readonly Func<bool, RecordWriter> _open;
    private readonly FreeSpace _space;
    private readonly RecordWriter _durable;
    private long _lastNumber;

    private StationHold(string station, StationLock @lock, Func<bool, RecordWriter> open, FreeSpace space)
    {
        (Station, _lock, _open, _space) = (station, @lock, open, space);
        _durable = open(true);
        _lastNumber = _durable.Runs.LastNumber(station);
    }

    /// <summary>Id of the station.</summary>
    public string Station { get; }

    /// <summary>Begins a run whose events are on the disk before <see cref="DurableJournal.Append"/> returns. For one thread at a time.</summary>
    public DurableJournal BeginRun()
    {
        var run = NextRun();
        return new DurableJournal(_durable, new RunWriter(_durable, run), run.ToString(), _space);
    }

    /// <summary>Goes on with a run of this station that has not ended, behind its last event.</summary>
    /// <param name="run">Id of the run; one that is not there, has ended or is another station's is a broken assumption and throws.</param>
    public DurableJournal ContinueRun(string run)
    {
        var row = RunNumber.TryParse(run, out var number) && number.Value.Station == Station ? _durable.Runs.FindUnfinished(number.Value) : null;
        if (number is null || row is null) throw new ArgumentException($"station {Station} has no unfinished run '{run}'", nameof(run));
        var (last, link) = _durable.Events.Last(row.Value);
        return new DurableJournal(_durable, new RunWriter(_durable, number.Value, row.Value, last, link), run, _space);
    }

    /// <summary>Begins a batch of rehearsal runs that a thread of its own writes, one transaction for each run.</summary>
    /// <exception cref="JournalFault">There is no room for it on the disk, or the record cannot be written.</exception>
    public BatchWriter BeginBatch()
    {
        if (_space.Trouble() is { } trouble) throw new JournalFault(trouble);
        return new BatchWriter(_open(false), NextRun);
    }

    public void Dispose()
    {
        _durable.Dispose();
        _lock.Dispose();
    }

    internal static StationResult Take(RecordFiles files, string station, TimeProvider time, Func<bool, RecordWriter> open, FreeSpace space)
    {
        if (!StationLock.TryTake(files.Stations, station, time.GetUtcNow(), out var taken, out var refused)) return refused;
        try
        {
            return new StationResult.Taken(new StationHold(station, taken, open, space));
        }
        catch (SqliteException fault)
        {
            taken.Dispose();
            return new StationResult.Refused(RecordTrouble.Describe(fault, files.Database), null);
        }
    }

    private RunNumber NextRun() => new(Station, Interlocked.Increment(ref _lastNumber));
}
