using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Where a text without quotes ends as its author sees it, which is not where YAML sees it end: brackets that pair and
/// quotes inside belong to the text, and a <c>#</c> begins a comment only with a blank (or nothing) behind it.
/// </summary>
internal static class TextExtent
{
    /// <returns>The offset behind the text's last character, in the line of <paramref name="start"/>.</returns>
    /// <param name="inFlow">True within { } or [ ], where a comma or a closing bracket ends the text as well.</param>
    public static int EndOf(SourceText source, int start, bool inFlow)
    {
        var lineEnd = source.EndOfLine(source.LineOf(start));
        var letters = source.Text;
        var open = 0;
        var end = start;
        for (; end < lineEnd; end++)
        {
            switch (letters[end])
            {
                case '#' when IsComment(letters, end, start, lineEnd):
                    return TrimmedEnd(letters, start, end);
                case ',' or '}' or ']' when inFlow && open == 0:
                    return TrimmedEnd(letters, start, end);
                case '(' or '[' or '{':
                    open++;
                    break;
                case ')' or ']' or '}':
                    open = Math.Max(0, open - 1);
                    break;
                case '"' when letters.IndexOf('"', end + 1, lineEnd - end - 1) is var closing and > 0:
                    end = closing;
                    break;
            }
        }

        return TrimmedEnd(letters, start, end);
    }

    private static bool IsComment(string letters, int at, int start, int lineEnd) =>
        at > start && char.IsWhiteSpace(letters[at - 1]) && (at + 1 == lineEnd || char.IsWhiteSpace(letters[at + 1]));

    private static int TrimmedEnd(string letters, int start, int end)
    {
        while (end > start && char.IsWhiteSpace(letters[end - 1])) end--;
        return end;
    }
}
