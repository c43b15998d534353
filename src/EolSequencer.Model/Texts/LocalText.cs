using System.Collections.Immutable;

namespace EolSequencer.Model.Texts;

/// <summary>
/// A text in one or more languages, with <c>{name}</c> where a value of a loop name or parameter goes in.
/// The first language written is the one that serves whoever has none of the others.
/// </summary>
/// <param name="Versions">Language code (ISO 639-1, lower case; empty when the author gave none) and text, in written order; never empty.</param>
public sealed record LocalText(ImmutableArray<LocalText.Version> Versions)
{
    /// <summary>One language's text.</summary>
    public readonly record struct Version(string Language, string Text);

    /// <summary>A text of no particular language.</summary>
    public static LocalText Plain(string text) => new([new Version("", text)]);

    /// <summary>The text for a language, else the first.</summary>
    public string For(string language)
    {
        foreach (var version in Versions)
        {
            if (version.Language == language) return version.Text;
        }

        return Versions[0].Text;
    }

    /// <summary>The text for a language with the names in braces filled in; an unknown name stays as written.</summary>
    public string Fill(string language, Func<string, string?> valueOf)
    {
        var text = For(language);
        var open = text.IndexOf('{');
        if (open < 0) return text;
        var filled = new System.Text.StringBuilder(text.Length + 16);
        var from = 0;
        while (open >= 0 && text.IndexOf('}', open) is var close and > 0)
        {
            filled.Append(text, from, open - from);
            filled.Append(valueOf(text[(open + 1)..close]) ?? text[open..(close + 1)]);
            from = close + 1;
            open = text.IndexOf('{', from);
        }

        return filled.Append(text, from, text.Length - from).ToString();
    }

    /// <summary>The same text with the names in braces filled in, in every language.</summary>
    public LocalText Fill(Func<string, string, string?> valueOf) =>
        new([.. Versions.Select(version => version with { Text = Fill(version.Language, name => valueOf(version.Language, name)) })]);

    public override string ToString() => Versions[0].Text;
}
