using System.Collections.Immutable;
using EolSequencer.Model.Events;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>One thing that a station did about a run that had broken off.</summary>
/// <param name="For">What it took the run up for.</param>
/// <param name="Past">What the record held of it by then.</param>
/// <param name="Told">What the engine told the record.</param>
/// <param name="Tried">What devices were told to do.</param>
internal sealed record TakenUp(ResumedFor For, ImmutableArray<RunEvent> Past, ImmutableArray<RunEvent> Told, ImmutableArray<string> Tried);
