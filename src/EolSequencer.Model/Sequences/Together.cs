using System.Collections.Immutable;

namespace EolSequencer.Model.Sequences;

/// <summary>Branches that start in the written order and end when all have ended.</summary>
public sealed record Together : Node
{
    /// <summary>The branches, in written order; at least two.</summary>
    public required ImmutableArray<Branch> Branches { get; init; }
}

/// <summary>One branch; its name is no part of an id.</summary>
public sealed record Branch(string Name, ImmutableArray<Node> Children);
