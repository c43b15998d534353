using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>Nodes in written order.</summary>
internal sealed class YamlList(SourceText source, int start, int end, IReadOnlyList<YamlNode> items) : YamlNode(source, start, end)
{
    public IReadOnlyList<YamlNode> Items { get; } = items;

    public override string Kind => "a list";
}
