using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.ExpectedResults;

/// <summary>A test of a sequence, complete: one rehearsal, and what must come of it.</summary>
public sealed record ExpectedRun
{
    /// <summary>Unique in its file.</summary>
    public required string Name { get; init; }

    /// <summary>Where the name stands.</summary>
    public required SourcePlace Place { get; init; }

    public required CheckedSequence Sequence { get; init; }
    public required Plant Plant { get; init; }
    public required StationFile Station { get; init; }
    public required Order Order { get; init; }

    /// <summary>Fixes all that the rehearsal leaves to chance.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What is wrong with the vehicle or its operator, as <c>--inject</c> takes it.</summary>
    public ImmutableArray<Stated<string>> Faults { get; init; } = [];

    /// <summary>What the person answers; null: the simulated person answers everything.</summary>
    public OperatorScript? Script { get; init; }

    /// <summary>Ids or patterns of the steps and groups wanted; empty: all.</summary>
    public ImmutableArray<string> Only { get; init; } = [];

    /// <summary>The roll-up's verdict.</summary>
    public required Stated<Verdict> Verdict { get; init; }

    /// <summary>What is expected of single steps. Each id stands in one of them at most.</summary>
    public ImmutableArray<ExpectedStep> Steps { get; init; } = [];

    /// <summary>What is expected of all other steps.</summary>
    public required Stated<OtherSteps> Others { get; init; }
}
