namespace EolSequencer.Language.Syntax;

/// <summary>A character that a keyboard, a text program or a web page puts in place of the one that counts.</summary>
/// <param name="Index">Where it stands in the text.</param>
/// <param name="Found">The character.</param>
/// <param name="Meant">What to write instead; may be several characters.</param>
/// <param name="Name">What it is called.</param>
internal sealed record LookAlike(int Index, char Found, string Meant, string Name)
{
    private static readonly Dictionary<char, (string Meant, string Name)> Known = new()
    {
        ['\u00BA'] = ("°", "the ordinal mark"),
        ['\u02DA'] = ("°", "the ring"),
        ['\u2013'] = ("..", "the en dash"),
        ['\u2014'] = ("..", "the em dash"),
        ['\u2010'] = ("-", "the typographic hyphen"),
        ['\u2011'] = ("-", "the fixed hyphen"),
        ['\u2026'] = ("..", "the ellipsis"),
        ['\u2025'] = ("..", "the two-dot leader"),
        ['\u00D7'] = ("*", "the times sign"),
        ['\u2044'] = ("/", "the fraction slash"),
        ['\u2215'] = ("/", "the division slash"),
        ['\u2264'] = ("at most", "the less-or-equal sign"),
        ['\u2265'] = ("at least", "the greater-or-equal sign"),
        ['\u2018'] = ("'", "the opening quote of a text program"),
        ['\u2019'] = ("'", "the closing quote of a text program"),
        ['\u201C'] = ("\"", "the opening quote of a text program"),
        ['\u201D'] = ("\"", "the closing quote of a text program"),
        ['\u201E'] = ("\"", "the opening quote of a text program"),
        ['\u00A0'] = (" ", "the fixed blank"),
        ['\u2009'] = (" ", "the thin blank"),
        ['\u202F'] = (" ", "the narrow fixed blank"),
        ['\u200B'] = ("", "a blank without width"),
        ['\u060C'] = (",", "the Arabic comma"),
        ['\uFF0C'] = (",", "the wide comma"),
    };

    /// <summary>The first such character of a text, or <c>null</c>.</summary>
    public static LookAlike? FirstIn(string text)
    {
        for (var index = 0; index < text.Length; index++)
        {
            if (Known.TryGetValue(text[index], out var known)) return new LookAlike(index, text[index], known.Meant, known.Name);
        }

        return null;
    }
}
