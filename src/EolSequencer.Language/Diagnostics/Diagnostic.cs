using EolSequencer.Model.Source;

namespace EolSequencer.Language.Diagnostics;

/// <summary>One finding in one document.</summary>
/// <param name="Code">Its kind.</param>
/// <param name="Place">The characters it speaks of.</param>
/// <param name="Found">What was found and what was expected, in the author's own words, with numbers and units.</param>
/// <param name="Hint">What to try.</param>
public sealed record Diagnostic(DiagnosticCode Code, SourcePlace Place, string Found, string Hint)
{
    public Severity Severity => Code.Severity;

    /// <summary>The one-line form: <c>file:line:column: error SEQ014: found – hint</c>.</summary>
    public override string ToString()
    {
        var place = Place.ToString();
        var head = place.Length == 0 ? "" : place + ": ";
        return $"{head}{SeverityWord} {Code.Id}: {Found} – {Hint}";
    }

    private string SeverityWord => Severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "information",
    };
}
