using System.Collections.Immutable;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Reading;

/// <summary>A run in full, checked while it was read.</summary>
/// <param name="Events">Every event with what it refers to; empty when one of them cannot be read.</param>
/// <param name="Trouble">The first thing that is not as it was written, for people; null when all is.</param>
public sealed record CheckedRun(string Run, ImmutableArray<RunEvent> Events, string? Trouble);
