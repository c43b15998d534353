using System.Text.RegularExpressions;

namespace EolSequencer.Language.Yaml;

/// <summary>What a raw line looks like to a person, whatever YAML made of it.</summary>
internal static partial class LineShape
{
    /// <summary>The key of a line that reads <c>key:</c> or <c>key: value</c>, perhaps behind <c>- </c>.</summary>
    public static string? Key(ReadOnlySpan<char> line) => Named(KeyPattern(), line);

    /// <summary>
    /// The position of the colon in a line that reads <c>key:value</c>; -1 for any other line. Addresses (<c>http://</c>)
    /// and drive letters do not count.
    /// </summary>
    public static int GluedColon(ReadOnlySpan<char> line)
    {
        foreach (var match in GluedPattern().EnumerateMatches(line)) return match.Index + match.Length - 2;
        return -1;
    }

    private static string? Named(Regex pattern, ReadOnlySpan<char> line)
    {
        foreach (var match in pattern.EnumerateMatches(line))
        {
            return line.Slice(match.Index, match.Length).TrimStart("- ").TrimEnd(": \t").ToString();
        }

        return null;
    }

    [GeneratedRegex(@"^ *(?:- +)?[A-Za-z][\w-]*:(?=[ \t]|$)", RegexOptions.CultureInvariant)]
    private static partial Regex KeyPattern();

    [GeneratedRegex(@"^ *(?:- +|\{ *)?[A-Za-z][\w-]+:[^ \t/:\\]", RegexOptions.CultureInvariant)]
    private static partial Regex GluedPattern();
}
