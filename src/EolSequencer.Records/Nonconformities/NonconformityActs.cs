using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Nonconformities;

/// <summary>A requirement is not met (ISO 9000:2015, 3.6.9): found by a step of a run that counts, or by a person.</summary>
/// <param name="Code">What it is, by the author's code, else the step's id without loop values.</param>
/// <param name="Finding">Where it was found by a step; null: by a person.</param>
/// <param name="Place">Where on the vehicle.</param>
/// <param name="Note">What a person saw.</param>
internal sealed record NonconformityOpened(string Id, string Vin, string Code, StepFinding? Finding = null, string? Place = null, string? Note = null) : Act;

/// <summary>The step was done again in a run that counts.</summary>
internal sealed record NonconformityRetested(string Id, bool Passed, StepFinding Finding) : Act;

/// <summary>A person looked at what was reworked or repaired, where no step does.</summary>
internal sealed record NonconformityInspected(string Id, bool Passed, string Note) : Act;

/// <summary>Something was done about it.</summary>
/// <param name="Kind"><c>rework</c>: it shall conform again; <c>repair</c>: it shall be fit for use, and wants a concession (ISO 9000:2015, 3.12.8 and 3.12.9).</param>
internal sealed record RepairDone(string Id, string Kind, string What, ImmutableArray<FittedPart> Parts) : Act;

/// <summary>The vehicle may be used as it is (ISO 9000:2015, 3.12.5), by two persons.</summary>
/// <param name="Second">Badge of the second person.</param>
internal sealed record ConcessionGiven(string Id, string Reason, string Second) : Act;

/// <summary>What a step found.</summary>
/// <param name="Event">Number of the event in the run.</param>
/// <param name="Value">Exactly as recorded; null when there is none.</param>
/// <param name="Window">The expectation as judged, for people.</param>
/// <param name="Picture">Relative to the plant's folder.</param>
internal sealed record StepFinding(string StationKind, string Step, string Run, int Event, string? Value = null, string? Unit = null, string? Window = null, string? Picture = null);

/// <summary>A part that was fitted.</summary>
public sealed record FittedPart(string Part, string Serial);
