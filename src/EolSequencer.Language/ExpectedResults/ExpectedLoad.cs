using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>What loading files of expected results came to.</summary>
/// <param name="Files">The files in the order of their paths; none when there is an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
/// <param name="LeftOut">How many findings are not among them because there were too many.</param>
public sealed record ExpectedLoad(IReadOnlyList<ExpectedFile> Files, IReadOnlyList<Diagnostic> Diagnostics, int LeftOut);
