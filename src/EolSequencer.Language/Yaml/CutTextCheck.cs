using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Tells a comment from a text that YAML cut off at <c> #</c>. A comment has a blank behind its <c>#</c>
/// (<c>within: 5 s   # time</c>); <c>Fit door #2 left</c> and <c>/a #b/</c> have none. A blank does not help where the
/// text is obviously unfinished: a bracket or a regular expression still open.
/// </summary>
internal static class CutTextCheck
{
    private const string RuledLine = "#-=~*";

    /// <summary>Reports a cut text and hands on the text its author meant; any other scalar is handed on as it is.</summary>
    public static YamlScalar Mended(YamlScalar scalar, bool inFlow, Report report)
    {
        if (!scalar.IsPlain || scalar.CommentAfter is not { } comment || !IsPartOfText(scalar, comment)) return scalar;

        var source = scalar.Source;
        var end = TextExtent.EndOf(source, scalar.End + comment.Spaces, inFlow);
        var isOneLine = source.LineOf(scalar.Start) == source.LineOf(scalar.End);
        report.Add(
            YamlCodes.CutByHash,
            comment.Place,
            $"the text ends at {Shown.Quoted(scalar.Text)}, because YAML takes {Shown.Quoted("#" + comment.Text)} for a comment",
            isOneLine ? $"{Quoting.Hint(source, scalar.Start, end)}; for a comment put a blank behind the #" : null);
        return new YamlScalar(source, scalar.Start, end, scalar.Text + source.Text[scalar.End..end], ScalarStyle.Plain);
    }

    private static bool IsPartOfText(YamlScalar scalar, TrailingComment comment)
    {
        if (comment.Text.Length == 0) return comment.Spaces == 1;
        var behindRule = comment.Text.AsSpan().TrimStart(RuledLine);
        return behindRule.Length > 0 && !char.IsWhiteSpace(behindRule[0]) || IsUnfinished(scalar.Text);
    }

    private static bool IsUnfinished(string text)
    {
        if (text.StartsWith("matches /", StringComparison.Ordinal)) return text.IndexOf('/', "matches /".Length) < 0;
        return text.Count(letter => letter is '(' or '[' or '{') > text.Count(letter => letter is ')' or ']' or '}');
    }
}
