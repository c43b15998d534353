using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>Keeps what the engine said, when, and how much of it the record has reported as kept.</summary>
internal sealed class ToldJournal(IRunJournal kept, VirtualTime time) : IRunJournal
{
    private readonly List<(RunEvent Event, TimeSpan At)> _told = [];

    /// <summary>Every event that was to be kept, with the virtual time at which it was told.</summary>
    public IReadOnlyList<(RunEvent Event, TimeSpan At)> Told => _told;

    /// <summary>How many of them were reported as kept.</summary>
    public int Reported { get; private set; }

    public void Append(RunEvent next)
    {
        _told.Add((next, time.Now));
        kept.Append(next);
        Reported++;
    }
}
