using System.Collections.Immutable;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Expressions;

/// <summary>A step or group that a walk through a sequence has met, judged before a place or not. Grows during the walk.</summary>
internal sealed class WalkedNode(ImmutableArray<LoopName> loops)
{
    private readonly Dictionary<string, WalkedNode> _children = new(StringComparer.Ordinal);

    /// <summary>The loop names of a group.</summary>
    public ImmutableArray<LoopName> Loops { get; } = loops;

    /// <summary>What is kept while a group runs; null: nothing, or it is a step.</summary>
    public Capture? Capture { get; private init; }

    /// <summary>What the node gives when it is a step; null for a group.</summary>
    public ResultNode.Step? Step { get; private init; }

    /// <summary>Names in this group, for advice.</summary>
    public IEnumerable<string> Names => _children.Keys.Order(StringComparer.Ordinal);

    public WalkedNode? Find(string name) => _children.GetValueOrDefault(name);

    /// <summary>A step of this group.</summary>
    public void Note(string step, ResultNode.Step node) => _children[step] = new WalkedNode([]) { Step = node };

    /// <summary>A group in this group; met again, it stays the same.</summary>
    public WalkedNode Enter(string group, ImmutableArray<LoopName> loops, Capture? capture)
    {
        if (_children.TryGetValue(group, out var known) && known.Step is null) return known;
        return _children[group] = new WalkedNode(loops) { Capture = capture };
    }
}
