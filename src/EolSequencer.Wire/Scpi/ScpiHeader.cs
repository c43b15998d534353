namespace EolSequencer.Wire.Scpi;

/// <summary>The name of a command as handbooks write it: <c>MEASure:CURRent?</c> is met by MEAS:CURR? and by the whole words.</summary>
/// <remarks>
/// Source: SCPI-1999 volume 1, 6.2.1: the capital letters are the short form, and only the short and the long form are
/// valid; upper and lower case mean the same.
/// </remarks>
public sealed class ScpiHeader
{
    private readonly string[] _long;
    private readonly string[] _short;

    /// <param name="pattern">The short form of each word in capitals, the rest in small letters.</param>
    public ScpiHeader(string pattern)
    {
        Pattern = pattern;
        _long = Words(pattern.ToUpperInvariant());
        _short = Words(string.Concat(pattern.Where(letter => !char.IsAsciiLetterLower(letter))));
    }

    /// <summary>As the handbook writes it.</summary>
    public string Pattern { get; }

    /// <summary>Whether a command's header is meant; a colon in front is allowed.</summary>
    public bool Matches(string header)
    {
        var words = Words(header.ToUpperInvariant());
        return words.Length == _long.Length && words.Index().All(word => word.Item == _long[word.Index] || word.Item == _short[word.Index]);
    }

    private static string[] Words(string header) => header.TrimStart(':').Split(':');
}
