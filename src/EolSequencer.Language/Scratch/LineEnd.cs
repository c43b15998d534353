using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace EolSequencer.Language.Scratch;

/// <summary>At a prompt nobody wants to type the semicolon behind <c>var x = 1</c>.</summary>
internal static class LineEnd
{
    private const string SemicolonExpected = "CS1002";

    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    /// <summary>The line, with a semicolon put behind it when that alone makes it whole.</summary>
    public static string Closed(string line) => Faults(line) is [{ Id: SemicolonExpected }] && Faults(line + ";").Count == 0 ? line + ";" : line;

    private static List<Diagnostic> Faults(string line) =>
        [.. CSharpSyntaxTree.ParseText(line, Script).GetDiagnostics().Where(fault => fault.Severity == DiagnosticSeverity.Error)];
}
