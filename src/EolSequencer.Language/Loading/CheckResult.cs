using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Loading;

/// <summary>What a check of files found.</summary>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
/// <param name="LeftOut">How many findings are not among them because there were too many.</param>
/// <param name="Files">How many files were looked at.</param>
public sealed record CheckResult(IReadOnlyList<Diagnostic> Diagnostics, int LeftOut, int Files)
{
    /// <summary>True when at least one file must not be used.</summary>
    public bool HasErrors => Diagnostics.Any(one => one.Severity == Severity.Error);
}
