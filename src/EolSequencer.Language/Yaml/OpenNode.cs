using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>A list or map whose end the reader has not seen yet.</summary>
internal abstract class OpenNode(SourceText source, int start, bool isFlow)
{
    private bool _isEmpty = true;

    /// <summary>True for one written with [ ] or { }.</summary>
    public bool IsFlow { get; } = isFlow;

    /// <summary>Offset of the bracket, of the first <c>-</c> or of the first key.</summary>
    public int Start { get; private set; } = start;

    public abstract char OpeningBracket { get; }

    public char ClosingBracket => OpeningBracket == '[' ? ']' : '}';

    /// <summary>False for block form, and for the map of one entry that YAML sees in <c>[ a: b ]</c>.</summary>
    public bool HasBracket => IsFlow && Start < Source.Text.Length && Source.Text[Start] == OpeningBracket;

    protected SourceText Source { get; } = source;

    /// <summary>Offset behind the last thing inside.</summary>
    protected int LastEnd { get; private set; } = start;

    public void Add(YamlNode node)
    {
        // The parser gives block maps, tagged nodes and bracketless maps a start that is not theirs.
        if (_isEmpty && !HasBracket && OpeningBracket == '{') Start = node.Start;
        _isEmpty = false;
        LastEnd = Math.Max(Start, node.End);
        Accept(node);
    }

    /// <param name="at">Offset of the closing bracket, if there is one.</param>
    public YamlNode Close(int at) => Build(HasBracket ? Math.Min(at + 1, Source.Text.Length) : Math.Max(Start, LastEnd));

    protected abstract void Accept(YamlNode node);

    protected abstract YamlNode Build(int end);
}
