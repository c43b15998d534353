using EolSequencer.Language.Source;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>One piece of a document: a scalar, a list, a map, or what the reader had to refuse.</summary>
internal abstract class YamlNode
{
    private protected YamlNode(SourceText source, int start, int end)
    {
        Source = source;
        Start = start;
        End = end;
    }

    /// <summary>The characters of the node, its quotes or brackets included.</summary>
    public SourcePlace Place => Source.PlaceOf(Start, End);

    /// <summary>What to call such a node in a message: "a text", "a list", "a map".</summary>
    public abstract string Kind { get; }

    internal SourceText Source { get; }

    /// <summary>Offset of the first character.</summary>
    internal int Start { get; }

    /// <summary>Offset just behind the last character.</summary>
    internal int End { get; }
}
