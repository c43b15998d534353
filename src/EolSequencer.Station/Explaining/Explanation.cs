using System.Collections.Immutable;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>A sequence for one vehicle in words, for people who work by it or look at what it does.</summary>
public sealed record Explanation
{
    /// <summary>What people call the sequence.</summary>
    public required Wording Title { get; init; }

    public required string Sequence { get; init; }

    public required int Revision { get; init; }

    /// <summary>What people call the vehicle type.</summary>
    public required Wording VehicleType { get; init; }

    public required Order Order { get; init; }

    /// <summary>What people call the plant.</summary>
    public required Wording Plant { get; init; }

    /// <summary>Where it is done; null when no station was named.</summary>
    public StationFile? Station { get; init; }

    public required string StationKind { get; init; }

    /// <summary>What the station may take for one vehicle; null when nothing is planned.</summary>
    public TimeSpan? CycleTime { get; init; }

    /// <summary>The planned time of everything.</summary>
    public required TimeSpan Planned { get; init; }

    /// <summary>The devices, each with what serves it.</summary>
    public required ImmutableArray<ExplainedFact> Devices { get; init; }

    /// <summary>The parameters of the sequence with their values.</summary>
    public required ImmutableArray<ExplainedFact> Parameters { get; init; }

    /// <summary>What runs, in the order in which it runs; parts with nothing in them are left out.</summary>
    public required ImmutableArray<ExplainedPart> Parts { get; init; }

    /// <summary>What is in the sequence and not planned for this vehicle, in written order, by full id, each with its reason.</summary>
    public required ImmutableArray<ExplainedFact> NotPlanned { get; init; }

    /// <summary>Every step in the order of the page.</summary>
    public IEnumerable<ExplainedStep> Steps => Parts.SelectMany(part => part.Items).SelectMany(ExplainedItem.StepsOf);
}

/// <summary>One of the parts of a sequence: before, steps, always, after the verdict.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="When">When it runs, as half a sentence.</param>
public sealed record ExplainedPart(string Title, string When, TimeSpan Planned, ImmutableArray<ExplainedItem> Items);

/// <summary>One thing to know, under a short label.</summary>
public sealed record ExplainedFact(string Label, Wording Text)
{
    public ExplainedFact(string label, string text)
        : this(label, Wording.Ours(text))
    {
    }
}
