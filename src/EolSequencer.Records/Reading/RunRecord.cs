using System.Collections.Immutable;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Reading;

/// <summary>One run in full: every event, with the texts of its files and the points of its series.</summary>
public sealed record RunRecord(RunSummary Summary, ImmutableArray<RunEvent> Events);
