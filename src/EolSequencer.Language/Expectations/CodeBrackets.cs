namespace EolSequencer.Language.Expectations;

/// <summary>Finds the end of C# in brackets without reading the C#.</summary>
internal static class CodeBrackets
{
    /// <summary>The offset of the bracket that closes the one at <paramref name="open"/>; −1 when none does.</summary>
    /// <remarks>Brackets inside texts and characters of the C# do not count.</remarks>
    public static int Close(ReadOnlySpan<char> text, int open)
    {
        var depth = 0;
        for (var at = open; at < text.Length; at++)
        {
            switch (text[at])
            {
                case '(':
                    depth++;
                    break;
                case ')' when --depth == 0:
                    return at;
                case '"' or '\'':
                    at = EndOfLiteral(text, at);
                    break;
            }
        }

        return -1;
    }

    private static int EndOfLiteral(ReadOnlySpan<char> text, int open)
    {
        for (var at = open + 1; at < text.Length; at++)
        {
            if (text[at] == '\\') at++;
            else if (text[at] == text[open]) return at;
        }

        return text.Length;
    }
}
