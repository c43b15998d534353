using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Rehearsal.Tests.Kit;

/// <summary>Keeps the events of a run in memory.</summary>
internal sealed class Recorded : IRunJournal
{
    private readonly List<RunEvent> _events = [];

    public ImmutableArray<RunEvent> Events => [.. _events];

    public void Append(RunEvent next) => _events.Add(next);
}
