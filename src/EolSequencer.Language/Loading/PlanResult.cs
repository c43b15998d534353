using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Loading;

/// <summary>What planning a sequence came to.</summary>
/// <param name="Plan">The plan; null when there is an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
/// <param name="LeftOut">How many findings are not among them because there were too many.</param>
public sealed record PlanResult(SequencePlan? Plan, IReadOnlyList<Diagnostic> Diagnostics, int LeftOut);
