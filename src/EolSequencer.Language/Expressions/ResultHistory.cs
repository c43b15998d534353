using System.Collections.Immutable;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Expressions;

/// <summary>The steps by which a scope came about, newest first. Shared ends are shared objects, so each is hashed once.</summary>
/// <param name="Walk">Every change made anywhere in the walk, in order.</param>
internal sealed record ResultHistory(ResultHistory? Before, ResultChange? Change, List<ResultChange> Walk)
{
    public static ResultHistory Begin() => new(null, null, []);

    public ResultHistory Then(ResultChange change)
    {
        Walk.Add(change);
        return new ResultHistory(this, change, Walk);
    }
}

/// <summary>One step on the way of a walk.</summary>
internal abstract record ResultChange
{
    private ResultChange() { }

    internal sealed record Added(string Step, ResultNode.Step Node) : ResultChange;

    internal sealed record Entered(string Group, ImmutableArray<LoopName> Loops, bool IsFragment, Capture? Capture) : ResultChange;

    internal sealed record Left(bool MayBeMissing) : ResultChange;

    internal sealed record Joined(ResultHistory Branch) : ResultChange;
}
