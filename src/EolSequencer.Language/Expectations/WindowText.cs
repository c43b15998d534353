namespace EolSequencer.Language.Expectations;

/// <summary>Where the marks of a window stand: outside the brackets of C#.</summary>
internal static class WindowText
{
    /// <summary>The offset of a mark; −1 when it does not stand outside brackets.</summary>
    public static int Find(ReadOnlySpan<char> text, ReadOnlySpan<char> mark, int from = 0)
    {
        for (var at = from; at <= text.Length - mark.Length; at++)
        {
            if (text[at..].StartsWith(mark)) return at;
            if (text[at] == '(' && CodeBrackets.Close(text, at) is var close and > 0) at = close;
        }

        return -1;
    }
}
