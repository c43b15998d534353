using EolSequencer.Language.Yaml;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Syntax;

/// <summary>A text for people in one or more languages, with its places, so that what stands in its braces can be checked.</summary>
/// <param name="Versions">Language code (empty for a text without one) and text, in written order; never empty.</param>
internal sealed record LanguageTexts(IReadOnlyList<(string Language, YamlScalar Text)> Versions)
{
    public LocalText ToLocalText() => new([.. Versions.Select(version => new LocalText.Version(version.Language, version.Text.Text))]);
}
