using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Identifying;

/// <summary>What identifying a vehicle came to.</summary>
/// <param name="Vehicle">What is run on which vehicle; null when there is an error, and then no run begins.</param>
/// <param name="Diagnostics">Everything found, errors and milder.</param>
public sealed record Identified(IdentifiedVehicle? Vehicle, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>A vehicle at a station, and the sequence that is run on it; all of them fit together.</summary>
public sealed record IdentifiedVehicle(StationFile Station, Plant Plant, CheckedSequence Sequence, Order Order);
