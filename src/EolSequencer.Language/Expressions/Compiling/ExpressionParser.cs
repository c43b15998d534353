using EolSequencer.Language.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Reads each text alone and whole, so that nothing in it can reach beyond its own expression.</summary>
internal static class ExpressionParser
{
    /// <summary>The longest expression, in UTF-16 units.</summary>
    public const int MostLetters = 2000;

    /// <summary>The most brackets inside each other.</summary>
    public const int MostDepth = 40;

    public static CSharpParseOptions Options { get; } =
        new(LanguageVersion.CSharp14, DocumentationMode.None, SourceCodeKind.Regular);

    /// <summary>The parsed text, or null when that is not possible and has been reported.</summary>
    /// <param name="known">Texts without a fault that have been parsed before, and join when they are now; null: nobody keeps them.</param>
    public static Draft? Parse(ExpressionText source, Report report, Dictionary<string, ExpressionSyntax>? known = null)
    {
        if (known?.GetValueOrDefault(source.Text) is { } parsed) return new Draft(source, parsed, report);
        if (Parse(source, report) is not { } syntax) return null;
        known?.Add(source.Text, syntax);
        return new Draft(source, syntax, report);
    }

    private static ExpressionSyntax? Parse(ExpressionText source, Report report)
    {
        var whole = source.Expression.Place;
        if (source.Text.Length > MostLetters)
        {
            report.Add(ExpressionCodes.TooLong, whole, $"the expression has {source.Text.Length} characters, the most is {MostLetters}");
            return null;
        }

        if (Depth(source.Text) > MostDepth)
        {
            report.Add(ExpressionCodes.TooLong, whole, $"more than {MostDepth} brackets stand inside each other");
            return null;
        }

        if (string.IsNullOrWhiteSpace(source.Text))
        {
            report.Add(ExpressionCodes.NotCSharp, whole, "there is no expression here", "write one, for example  bus.brake_switch");
            return null;
        }

        var syntax = SyntaxFactory.ParseExpression(source.Text, options: Options, consumeFullText: true);
        var fault = syntax.GetDiagnostics().FirstOrDefault(one => one.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error);
        if (fault is null) return syntax;

        // What is left over behind a whole expression is the fault; the compiler points at the expression.
        var rest = syntax.GetTrailingTrivia().FirstOrDefault(trivia => trivia.IsKind(SyntaxKind.SkippedTokensTrivia));
        var span = rest == default ? fault.Location.SourceSpan : rest.GetStructure()!.GetFirstToken().Span;
        var advice = source.Text.AsSpan(span.Start).StartsWith(",") ? "a number has a point, no comma" : null;
        report.Add(ExpressionCodes.NotCSharp, source.PlaceOf(span.Start, span.Length), CompilerWords.Of(fault), advice);
        return null;
    }

    private static int Depth(string text)
    {
        var (depth, most) = (0, 0);
        foreach (var letter in text)
        {
            if (letter is '(' or '[' or '{') most = Math.Max(most, ++depth);
            if (letter is ')' or ']' or '}') depth--;
        }

        return most;
    }
}
