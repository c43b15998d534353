using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>What is put into words: a sequence for one vehicle.</summary>
/// <param name="Station">Says what serves the devices; null when no station was named.</param>
public sealed record Subject(Plant Plant, CheckedSequence Sequence, Order Order, StationFile? Station);
