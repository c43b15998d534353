using EolSequencer.Model.Source;

namespace EolSequencer.Language.Diagnostics;

/// <summary>
/// Collects what one check run finds. A pass reports a fault, hands on <c>null</c> ("already reported") and goes on,
/// so that an author hears of all faults at once, each once.
/// </summary>
public sealed class Report
{
    /// <summary>Errors kept; further ones are only counted. The same bound holds for everything milder.</summary>
    public const int MostErrors = 200;

    private readonly HashSet<Diagnostic> _seen = [];
    private readonly List<Diagnostic> _kept = [];
    private int _errors;

    /// <summary>True when at least one error was reported: the document must not be used.</summary>
    public bool HasErrors => _errors > 0;

    /// <summary>How many findings came after the bound was reached and are not in <see cref="InOrder"/>.</summary>
    public int LeftOut { get; private set; }

    /// <summary>The findings by file, line and column; those at one place in the order they were reported.</summary>
    public IReadOnlyList<Diagnostic> InOrder =>
    [
        .. _kept
            .OrderBy(one => one.Place.File, StringComparer.Ordinal)
            .ThenBy(one => one.Place.Line)
            .ThenBy(one => one.Place.Column),
    ];

    /// <summary>Takes over what another report found, and what it left out.</summary>
    /// <param name="isWanted">Findings for which this is false are dropped.</param>
    internal void Absorb(Report other, Func<Diagnostic, bool> isWanted)
    {
        foreach (var finding in other._kept.Where(isWanted)) Add(finding);
        LeftOut += other.LeftOut;
    }

    /// <param name="hint">What to try; without it the cure of the code.</param>
    public void Add(DiagnosticCode code, SourcePlace place, string found, string? hint = null) =>
        Add(new Diagnostic(code, place, found, hint ?? code.Cure));

    public void Add(Diagnostic finding)
    {
        var isError = finding.Severity == Severity.Error;
        var keptOfKind = isError ? _errors : _kept.Count - _errors;
        if (_seen.Contains(finding)) return;
        if (keptOfKind >= MostErrors)
        {
            LeftOut++;
            return;
        }

        _seen.Add(finding);
        _kept.Add(finding);
        if (isError) _errors++;
    }
}
