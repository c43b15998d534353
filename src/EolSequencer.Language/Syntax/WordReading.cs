using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Syntax;

/// <summary>Words of a closed set. Case counts, and a number never stands for a word.</summary>
internal static class WordReading
{
    public static T? AsWord<T>(this YamlNode node, string what, Words<T> words, Report report) where T : struct =>
        node.AsOneOf(what, words.All, report) is { } word ? words[word] : null;

    /// <summary>One of some words that are known only now, such as the values of an option.</summary>
    public static string? AsOneOf(this YamlNode node, string what, IReadOnlyList<string> words, Report report)
    {
        if (node.AsText(what, report) is not { } scalar) return null;
        if (words.Contains(scalar.Text)) return scalar.Text;

        var all = Shown.OneOf(words);
        var hint = Nearest.Of(scalar.Text, words) is { } meant ? $"did you mean '{meant}'? Possible is {all}" : $"write {all}";
        report.Add(SyntaxCodes.UnknownWord, scalar.Place, $"{what} cannot be {Shown.Quoted(scalar.Text)}", hint);
        return null;
    }
}
