using System.Collections.Immutable;

namespace EolSequencer.Station.Explaining;

/// <summary>A step, or several under one heading.</summary>
public abstract record ExplainedItem
{
    private protected ExplainedItem() { }

    /// <summary>Full id with loop values; empty for branches.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it; null when the id serves.</summary>
    public Wording? Title { get; init; }

    /// <summary>Where the operator stands; null when nothing says so.</summary>
    public Wording? Place { get; init; }

    /// <summary>Shown and acknowledged before it begins; null when there is none.</summary>
    public Wording? Caution { get; init; }

    /// <summary>From beginning to end.</summary>
    public required TimeSpan Planned { get; init; }

    /// <summary>What else there is to know, the most important first.</summary>
    public required ImmutableArray<ExplainedFact> Facts { get; init; }

    /// <summary>The steps in it, in order.</summary>
    public static IEnumerable<ExplainedStep> StepsOf(ExplainedItem item) => item switch
    {
        ExplainedStep step => [step],
        ExplainedBlock block => block.Items.SelectMany(StepsOf),
        _ => [],
    };
}

/// <summary>One step.</summary>
public sealed record ExplainedStep : ExplainedItem
{
    /// <summary>Counts the steps from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What the person is told; null when a device or nobody acts.</summary>
    public Wording? Prompt { get; init; }

    /// <summary>What is done: with a prompt, how it ends.</summary>
    public required string Does { get; init; }

    /// <summary>What the value must be; null when none is judged.</summary>
    public string? MustBe { get; init; }

    /// <summary>True when it gives a verdict.</summary>
    public required bool IsJudged { get; init; }

    /// <summary>Full path of the picture beside the prompt; null: none.</summary>
    public string? Picture { get; init; }
}

/// <summary>How the parts of a block run.</summary>
public enum BlockKind
{
    /// <summary>One after the other, under one id.</summary>
    Group,

    /// <summary>All at the same time; each part is a <see cref="Branch"/>.</summary>
    SideBySide,

    /// <summary>One after the other, beside the other branches.</summary>
    Branch,

    /// <summary>In whatever order; the prompts stand on one screen.</summary>
    AnyOrder,
}

/// <summary>Several steps under one heading.</summary>
public sealed record ExplainedBlock : ExplainedItem
{
    public required BlockKind Kind { get; init; }

    /// <summary>What it holds.</summary>
    public required ImmutableArray<ExplainedItem> Items { get; init; }
}
