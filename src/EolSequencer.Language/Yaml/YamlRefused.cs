using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Stands where the reader has already reported that nothing usable is there (a key without a value, an alias).
/// Whoever meets it hands on <c>null</c> and says nothing more.
/// </summary>
internal sealed class YamlRefused(SourceText source, int start, int end) : YamlNode(source, start, end)
{
    public override string Kind => "nothing usable";
}
