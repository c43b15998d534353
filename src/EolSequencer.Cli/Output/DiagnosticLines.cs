using EolSequencer.Language.Diagnostics;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>Diagnostics, one a line in the form that editors and build servers jump to; never wrapped.</summary>
internal static class DiagnosticLines
{
    public static void Write(IAnsiConsole console, IEnumerable<Diagnostic> diagnostics)
    {
        foreach (var one in diagnostics) console.Profile.Out.Writer.WriteLine(one);
    }

    public static object AsJson(Diagnostic one) => new
    {
        file = one.Place.File,
        line = one.Place.Line,
        column = one.Place.Column,
        endLine = one.Place.EndLine,
        endColumn = one.Place.EndColumn,
        severity = one.Severity.ToString().ToLowerInvariant(),
        code = one.Code.Id,
        found = one.Found,
        hint = one.Hint,
    };
}
