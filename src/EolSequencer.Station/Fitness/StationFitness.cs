using System.Collections.Immutable;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Fitness;

/// <summary>What speaks against a production run at a station, sorted by what the plant makes of it.</summary>
/// <param name="Refused">Why none begins; empty when one may.</param>
/// <param name="Calibrations">Instruments that are overdue and let go on; a run shows them from what it records of its instruments.</param>
/// <param name="Flagged">All else that is let go on and that a run records.</param>
public sealed record StationFitness(ImmutableArray<string> Refused, ImmutableArray<string> Calibrations, ImmutableArray<string> Flagged)
{
    /// <summary>A station of which nothing is asked: for rehearsals and checks.</summary>
    public static StationFitness Unasked { get; } = new([], [], []);

    /// <summary>Looks at instruments and at the check against the reference.</summary>
    /// <param name="runs">The record that has the station's checks; null only at a station that has none.</param>
    public static StationFitness For(StationFile station, CheckedSequence sequence, Plant plant, RunReader? runs, DateTimeOffset now)
    {
        var overdue = Fitness.Calibrations.Overdue(station, sequence, plant, now);
        var check = station.ShiftCheck is null ? null
            : ShiftCheck.State(runs ?? throw new ArgumentNullException(nameof(runs), $"station '{station.Id}' is checked against a reference"), station, plant, now);
        ImmutableArray<string> missing = check is null or { Outcome: ShiftCheckOutcome.Passed } ? [] : [check.Words];
        var refusesOverdue = plant.OverdueInstruments == OverdueRule.Refuse;
        var refusesUnchecked = plant.OverdueCheck == OverdueRule.Refuse;
        return new StationFitness(
            [.. refusesOverdue ? overdue : [], .. refusesUnchecked ? missing : []],
            refusesOverdue ? [] : overdue,
            refusesUnchecked ? [] : missing);
    }
}
