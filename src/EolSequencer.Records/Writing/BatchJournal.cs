using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Records.Writing;

/// <summary>
/// The journal of one rehearsal run: holds its events until it is complete and then hands them over to be written. For one
/// thread at a time. Disposed without being completed, it leaves nothing.
/// </summary>
public sealed class BatchJournal : IRunJournal, IDisposable
{
    private const int UsualEvents = 320;

    private readonly BatchWriter _writer;
    private readonly List<RunEvent> _events = new(UsualEvents);
    private bool _handedOver;

    internal BatchJournal(BatchWriter writer, long number, RunNumber id) => (_writer, Number, Id) = (writer, number, id);

    /// <summary>Id of the run; its first event has to carry it.</summary>
    public string Run => Id.ToString();

    internal long Number { get; }

    internal RunNumber Id { get; }

    internal IReadOnlyList<RunEvent> Events => _events;

    /// <summary>Takes the next event.</summary>
    /// <exception cref="JournalFault">The writer could not keep an earlier run; nothing more will be kept.</exception>
    public void Append(RunEvent next)
    {
        _writer.ThrowIfFaulty();
        if (_handedOver) throw new InvalidOperationException($"run {Run} is complete; event {next.N} comes too late");
        if (next is RunBegun { Mode: not RunMode.Rehearsal }) throw new InvalidOperationException("a run that counts is never written in a batch");
        _events.Add(next);
    }

    /// <summary>Hands the run over; waits while <see cref="BatchWriter.MostReady"/> others are to be written.</summary>
    /// <exception cref="JournalFault">The writer could not keep an earlier run, and this one will not be kept.</exception>
    public void Complete()
    {
        HandOver(isWanted: true);
        _writer.ThrowIfFaulty();
    }

    public void Dispose() => HandOver(isWanted: false);

    private void HandOver(bool isWanted)
    {
        if (_handedOver) return;
        _handedOver = true;
        _writer.Finish(this, isWanted);
    }
}
