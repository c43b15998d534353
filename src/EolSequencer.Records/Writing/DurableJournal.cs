using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>
/// The journal of a production run: an event is on the disk, with the rows that are read from, before
/// <see cref="Append"/> returns. For one thread at a time.
/// </summary>
/// <remarks>
/// After a fault everything before the event is kept, and the event is not read any more by this program. The same event may
/// be appended again once there is room; until then every further one is refused. When the disk fails in the very moment at
/// which it should confirm, and nothing is written behind that, the next program may find the event whole.
/// </remarks>
public sealed class DurableJournal : IRunJournal
{
    private readonly RecordWriter _record;
    private readonly RunWriter _writer;
    private readonly FreeSpace _space;

    internal DurableJournal(RecordWriter record, RunWriter writer, string run, FreeSpace space)
    {
        (_record, _writer, Run, _space) = (record, writer, run, space);
    }

    /// <summary>Id of the run; its first event has to carry it.</summary>
    public string Run { get; }

    /// <summary>Number of events that are kept.</summary>
    public int Count => _writer.Count;

    /// <inheritdoc/>
    public void Append(RunEvent next)
    {
        if (next is RunBegun && _space.Trouble() is { } trouble) throw new JournalFault(trouble);
        try
        {
            _record.Begin();
            _writer.Add(next);
            _record.Commit();
        }
        catch (SqliteException fault)
        {
            Undo();
            throw new JournalFault(_record.Describe(fault), fault);
        }
        catch
        {
            Undo();
            throw;
        }

        _writer.Accept(next);
    }

    private void Undo()
    {
        try
        {
            _record.Rollback();
        }
        catch (SqliteException)
        {
            // The fault that brought us here is the one to report; the next transaction will tell whether it lasts.
        }
    }
}
