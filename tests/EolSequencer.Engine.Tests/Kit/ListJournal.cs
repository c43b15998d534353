using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>Keeps events in memory; can be told to fail at the Nth.</summary>
/// <param name="past">What stands in it already.</param>
internal sealed class ListJournal(params IEnumerable<RunEvent> past) : IRunJournal
{
    public List<RunEvent> Events { get; } = [.. past];

    public int? FailAt { get; init; }

    /// <summary>Told of each event once it is kept.</summary>
    public Action<RunEvent> Kept { get; init; } = _ => { };

    public void Append(RunEvent next)
    {
        if (Events.Count + 1 == FailAt) throw new JournalFault("disk full");
        Events.Add(next);
        Kept(next);
    }
}
