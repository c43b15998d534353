using System.Text.RegularExpressions;

namespace EolSequencer.Language.Editing.Names;

/// <summary>The dotted name that a caret touches in a text, up to the caret's word.</summary>
/// <param name="Segments">The names in front of the word, without brackets.</param>
/// <param name="Start">Where the word begins.</param>
/// <param name="End">Where it ends; a caret at its end touches it.</param>
/// <param name="Role">What the word is in the name.</param>
internal sealed partial record NamePath(IReadOnlyList<string> Segments, int Start, int End, NamePathRole Role)
{
    public static NamePath At(string text, int caret)
    {
        var start = caret;
        while (start > 0 && IsWord(text[start - 1])) start--;
        var end = caret;
        while (end < text.Length && IsWord(text[end])) end++;

        var before = text[..start];
        if (Compared().Match(before) is { Success: true } compared) return new NamePath(Split(compared.Groups[1].Value), start, end, NamePathRole.Compared);
        if (Indexed().Match(before) is { Success: true } index) return new NamePath(Split(index.Groups[1].Value), start, end, index.Groups[2].Length > 0 ? NamePathRole.QuotedIndex : NamePathRole.Index);
        if (Behind().Match(before) is { Success: true } path) return new NamePath(Split(path.Groups[1].Value), start, end, NamePathRole.Part);
        return new NamePath([], start, end, NamePathRole.Part);
    }

    /// <summary>A path without its indexes and loop values.</summary>
    public static string WithoutBrackets(string path) => Brackets().Replace(path, "");

    private static string[] Split(string path) => WithoutBrackets(path).Split('.');

    private static bool IsWord(char letter) => char.IsAsciiLetterOrDigit(letter) || letter == '_';

    private const string Path = @"([A-Za-z_]\w*(?:\[[^\]]*\])?(?:\.[A-Za-z_]\w*(?:\[[^\]]*\])?)*)";

    [GeneratedRegex(Path + @"\s*[!=]=\s*\\?""$", RegexOptions.CultureInvariant)]
    private static partial Regex Compared();

    [GeneratedRegex(Path + @"\[\s*(\\?"")?$", RegexOptions.CultureInvariant)]
    private static partial Regex Indexed();

    [GeneratedRegex(Path + @"\.$", RegexOptions.CultureInvariant)]
    private static partial Regex Behind();

    [GeneratedRegex(@"\[[^\]]*\]", RegexOptions.CultureInvariant)]
    private static partial Regex Brackets();
}

/// <summary>What a word is in a dotted name.</summary>
internal enum NamePathRole
{
    /// <summary>The first name, or one behind a point.</summary>
    Part,
    /// <summary>In brackets.</summary>
    Index,
    /// <summary>In brackets and quotes.</summary>
    QuotedIndex,
    /// <summary>In quotes, compared with what is named.</summary>
    Compared,
}
