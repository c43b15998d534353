using EolSequencer.Language.Expressions;
using EolSequencer.Language.Expressions.Compiling;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Scratch;

/// <summary>What the compiler found in a line, with its column; about units in the words of sequences, else in its own.</summary>
internal static class ScratchWords
{
    public static string Of(Diagnostic fault, Compilation compilation, TextEdits edits)
    {
        return $"column {Column(fault.Location, edits) + 1}: {AboutUnits(fault, compilation) ?? CompilerWords.Of(fault)}";
    }

    /// <summary>Where the line as it was typed has the fault, from 0; behind its end when something is missing there.</summary>
    private static int Column(Location location, TextEdits edits)
    {
        var (start, end) = (location.SourceSpan.Start, location.SourceTree?.Length ?? 0);
        if (start < end || end == 0) return edits.ToAuthor(start, location.SourceSpan.Length).Start;
        var (last, length) = edits.ToAuthor(end - 1, 1);
        return last + length;
    }

    private static string? AboutUnits(Diagnostic fault, Compilation compilation)
    {
        if (fault.Location.SourceTree is not { } tree) return null;
        var objection = CompilerWords.Of(fault, tree.GetRoot(), compilation.GetSemanticModel(tree));
        var isAbout = objection.Code == ExpressionCodes.UnknownUnit || objection.Code == ExpressionCodes.UnitNeeded || objection.Code == ExpressionCodes.DifferentDimensions;
        return isAbout ? $"{objection.Found}{(objection.Hint is { } hint ? $" – {hint}" : "")}" : null;
    }
}
