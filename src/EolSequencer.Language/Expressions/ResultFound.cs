using System.Collections.Immutable;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Expressions;

/// <summary>A step or group that a path behind <c>results</c> has come to.</summary>
/// <param name="Judged">What it is when it has been judged before the place; null when it has not.</param>
/// <param name="Walked">What the walk met under that name.</param>
/// <param name="Levels">In how many of the groups around the asking step the path begins.</param>
/// <param name="MayBeMissing">True when this or a group on the way to it may be left out.</param>
internal sealed record ResultFound(ResultNode? Judged, WalkedNode Walked, int Levels, bool MayBeMissing)
{
    /// <summary>What it gives when it is a step; null for a group.</summary>
    public ResultNode.Step? Step => Judged as ResultNode.Step ?? Walked.Step;

    /// <summary>The loop names of a group.</summary>
    public ImmutableArray<LoopName> Loops => Walked.Loops;

    /// <summary>A step or group inside a group.</summary>
    public ResultFound? Child(string name)
    {
        if (Walked.Find(name) is not { } child) return null;
        var judged = (Judged as ResultNode.Group)?.Children.GetValueOrDefault(name);
        return new ResultFound(judged, child, Levels, MayBeMissing || judged is { MayBeMissing: true });
    }
}
