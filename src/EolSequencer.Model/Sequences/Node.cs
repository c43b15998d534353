using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Sequences;

/// <summary>A step, a group or branches that run together, as the checker hands it on.</summary>
public abstract record Node
{
    private protected Node() { }

    /// <summary>Its own part of the id, such as <c>torque</c>; empty for <see cref="Together"/>.</summary>
    public required string Id { get; init; }

    /// <summary>Where it stands in the author's file.</summary>
    public required SourcePlace Place { get; init; }

    /// <summary>What people call it; null when the id serves.</summary>
    public LocalText? Title { get; init; }

    /// <summary>Decided once before the first step; false: not applicable. Null: always applies.</summary>
    public Expression? When { get; init; }

    /// <summary>Decided at its turn from readings and results; false: not needed. Null: always needed.</summary>
    public Expression? OnlyIf { get; init; }

    /// <summary>Watched from start to end of the node.</summary>
    public Requirement? Require { get; init; }

    /// <summary>Further attempts.</summary>
    public RetryRule? Retry { get; init; }

    /// <summary>Shown and acknowledged before the node starts; null when there is none.</summary>
    public LocalText? Caution { get; init; }

    /// <summary>What must have been done before: ids of groups or steps that stand before it, looked for in the groups around it, nearest first.</summary>
    public ImmutableArray<Dependency> DependsOn { get; init; } = [];

    /// <summary>Where the operator stands: an id of the plant's places. Null: as around it.</summary>
    public string? OperatorPlace { get; init; }
}

/// <summary>A group or step that another depends on.</summary>
/// <param name="Name">Its id without loop values, from the group that both are in: <c>ignition</c>, <c>start.engine</c>.</param>
public sealed record Dependency(string Name, SourcePlace Place);

/// <summary>A condition that must hold all the time.</summary>
/// <param name="That">False, or unknown beyond the stale limit, ends the node as inconclusive.</param>
/// <param name="ElseStop">True: the run stops as well.</param>
public sealed record Requirement(Expression That, bool ElseStop);

/// <summary>Further attempts after an attempt that did not pass.</summary>
/// <param name="Times">Most further attempts, 1 to 9.</param>
/// <param name="On">The measured verdicts that allow one.</param>
/// <param name="Pause">Time between two attempts.</param>
public sealed record RetryRule(int Times, ImmutableArray<Judging.Verdict> On, TimeSpan Pause);
