using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Planning;

/// <summary>A node as it will run on one vehicle: loops unrolled, limits picked, what does not apply left out.</summary>
public abstract record PlannedNode
{
    private protected PlannedNode() { }

    /// <summary>Full id with loop values: <c>wheel_nuts[fl].torque</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The id without loop values: <c>wheel_nuts.torque</c>.</summary>
    public required string Pattern { get; init; }

    /// <summary>Loop names and parameters in force.</summary>
    public required Arguments Arguments { get; init; }

    /// <summary>How values of names read on a screen, nearest first.</summary>
    public required ImmutableArray<Words> Words { get; init; }

    /// <summary>Where the operator stands; null when nothing says so.</summary>
    public string? OperatorPlace { get; init; }

    /// <summary>The channels kept as traces while it runs, in written order; only groups have some.</summary>
    public ImmutableArray<PlannedCapture> Captures { get; init; } = [];

    /// <summary>How the value of a loop name or parameter reads in a language; null when there is no such name.</summary>
    public string? WordFor(string language, string name)
    {
        if (Arguments.Find(name)?.ToString() is not { } value) return null;
        foreach (var word in Words)
        {
            if (word.Name == name && word.Value == value) return word.Text.For(language);
        }

        return value.Replace('_', ' ');
    }
}

/// <summary>A step of the plan.</summary>
public sealed record PlannedStep : PlannedNode
{
    /// <summary>What the author wrote, checked.</summary>
    public required Step Step { get; init; }

    /// <summary>What the value must be on this vehicle; still by index for a channel that is read as a whole.</summary>
    public Expectation? Expect { get; init; }

    /// <summary>The indexes that a read of a whole channel covers on this vehicle; empty for one value.</summary>
    public ImmutableArray<string> Indexes { get; init; } = [];
}

/// <summary>One instance of a group.</summary>
public sealed record PlannedGroup : PlannedNode
{
    /// <summary>What the author wrote, checked.</summary>
    public required Group Group { get; init; }

    /// <summary>What runs inside.</summary>
    public required ImmutableArray<PlannedNode> Children { get; init; }

    /// <summary>What runs behind it, whatever happened inside.</summary>
    public ImmutableArray<PlannedNode> Always { get; init; } = [];
}

/// <summary>
/// What runs side by side: the branches of <c>together</c>, or the lanes of an <c>any-order</c> group, whose prompts
/// stand on one screen.
/// </summary>
public sealed record PlannedLanes : PlannedNode
{
    /// <summary>The lanes, in written order.</summary>
    public required ImmutableArray<ImmutableArray<PlannedNode>> Lanes { get; init; }

    /// <summary>The names of the branches, one for each lane; empty for an <c>any-order</c> group.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>The screen that the prompts share; null: one prompt is shown at a time.</summary>
    public string? Screen { get; init; }

    /// <summary>What runs when all lanes have ended, whatever happened in them.</summary>
    public ImmutableArray<PlannedNode> Always { get; init; } = [];

    /// <summary>The node with the conditions that hold for all lanes.</summary>
    public required Node Node { get; init; }
}
