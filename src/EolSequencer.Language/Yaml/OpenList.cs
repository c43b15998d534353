using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

internal sealed class OpenList(SourceText source, int start, bool isFlow) : OpenNode(source, start, isFlow)
{
    private readonly List<YamlNode> _items = [];

    public override char OpeningBracket => '[';

    protected override void Accept(YamlNode node) => _items.Add(node);

    protected override YamlNode Build(int end) => new YamlList(Source, Start, end, _items);
}
