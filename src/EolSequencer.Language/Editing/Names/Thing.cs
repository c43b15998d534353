using EolSequencer.Model.Source;

namespace EolSequencer.Language.Editing.Names;

/// <summary>Something that has a name at one place of a file.</summary>
/// <param name="Name">As it is written there.</param>
/// <param name="Detail">What it is, in a few words.</param>
internal sealed record Thing(string Name, ProposalKind Kind, string Detail)
{
    /// <summary>More about it, in lines; empty: the detail says all.</summary>
    public string Text { get; init; } = "";

    /// <summary>Where it is described; null: nowhere an editor could go.</summary>
    public SourcePlace? Place { get; init; }

    /// <summary>What may be named behind it and a point.</summary>
    public Func<IEnumerable<Thing>> Parts { get; init; } = () => [];

    /// <summary>What may stand in brackets behind it; empty: it has no index.</summary>
    public IReadOnlyList<string> Indexes { get; init; } = [];

    /// <summary>The values it can have, where they are known.</summary>
    public IReadOnlyList<string> Values { get; init; } = [];
}
