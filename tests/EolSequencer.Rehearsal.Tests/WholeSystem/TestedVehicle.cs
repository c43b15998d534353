using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>One vehicle as everybody saw it: engine, journal, devices; and later what its record says.</summary>
internal sealed record TestedVehicle
{
    /// <summary>Id of the run.</summary>
    public required string Run { get; init; }
    public required VehicleStory Story { get; init; }

    /// <summary>What was to be done.</summary>
    public required Plan Plan { get; init; }

    /// <summary>What the engine told the record, when.</summary>
    public required ImmutableArray<(RunEvent Event, TimeSpan At)> Told { get; init; }

    /// <summary>How many of that were reported as kept.</summary>
    public required int Reported { get; init; }

    /// <summary>How many of that were shown.</summary>
    public required int Shown { get; init; }

    /// <summary>What the engine made of it.</summary>
    public required RunResult Result { get; init; }

    /// <summary>What devices were told to do.</summary>
    public required ImmutableArray<(TimeSpan At, string Action)> Tried { get; init; }

    /// <summary>Wall time at its beginning.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Virtual time from the beginning to the end.</summary>
    public required TimeSpan Took { get; init; }

    /// <summary>True: power or program were gone before the next vehicle.</summary>
    public bool Crashed { get; init; }

    /// <summary>What the record holds of that, read anew; null: nothing.</summary>
    public ImmutableArray<RunEvent>? Recorded { get; init; }

    /// <summary>What was done about it when the program began anew, in order; empty when it had ended.</summary>
    public ImmutableArray<TakenUp> TakenUp { get; init; } = [];

    /// <summary>What the record holds of the run once everything is over; null: nothing.</summary>
    public ImmutableArray<RunEvent>? AtLast { get; init; }

    /// <summary>Wall time at a moment of the run, with all settings of the clock up to then.</summary>
    public DateTimeOffset WallAt(TimeSpan moment) =>
        Start + moment + Story.ClockSteps.Where(step => step.At <= moment).Aggregate(TimeSpan.Zero, (sum, step) => sum + step.By);
}
