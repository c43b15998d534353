using System.Collections.Immutable;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>An unrolled step, group or <c>together</c> in the order in which it runs.</summary>
internal abstract record Unrolled
{
    private Unrolled() { }

    /// <summary>One step.</summary>
    public sealed record Single(NodeInstance Step) : Unrolled;

    /// <summary>One turn of a group, or an any-order group with all its turns: what is in it, one after the other.</summary>
    public sealed record Series(NodeInstance Group, ImmutableArray<Unrolled> Items) : Unrolled;

    /// <summary>What runs side by side: the branches of a <c>together</c>, or the prompts of an any-order group.</summary>
    /// <param name="Of">The branches; null for an any-order group, whose parts share one screen on purpose.</param>
    public sealed record Lanes(NodeInstance? Of, ImmutableArray<ImmutableArray<Unrolled>> All) : Unrolled;
}
