using EolSequencer.Model.Texts;

namespace EolSequencer.Station.Explaining;

/// <summary>A text with the language it is in.</summary>
/// <param name="Language">ISO 639-1 code of what an author wrote; empty when the author gave none; null for words of this program, which are English.</param>
public sealed record Wording(string Text, string? Language)
{
    /// <summary>Words of this program.</summary>
    public static Wording Ours(string text) => new(text, null);

    /// <summary>An author's text in the language wanted, else in the first it has; names in braces are filled in.</summary>
    /// <param name="valueOf">How the value of a name reads, by language and name; null where there are no names.</param>
    public static Wording Of(LocalText text, string language, Func<string, string, string?>? valueOf = null)
    {
        var found = text.Versions.FirstOrDefault(version => version.Language == language, text.Versions[0]);
        return new Wording(text.Fill(found.Language, name => valueOf?.Invoke(language, name)), found.Language);
    }

    public override string ToString() => Text;
}
