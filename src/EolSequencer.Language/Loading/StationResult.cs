using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>What loading a station file came to.</summary>
/// <param name="Station">The station; null when there is an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
public sealed record StationResult(StationFile? Station, IReadOnlyList<Diagnostic> Diagnostics);
