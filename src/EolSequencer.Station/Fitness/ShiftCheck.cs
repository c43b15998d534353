using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Records.Reading;

namespace EolSequencer.Station.Fitness;

/// <summary>
/// Whether a station has been checked against its reference. The newest whole check since the shift began decides; outside of all
/// shifts that of the shift before still holds.
/// </summary>
public static class ShiftCheck
{
    /// <summary>How a station stands; null when its file asks for no check.</summary>
    /// <param name="runs">The record that has its checks.</param>
    /// <param name="mode">What its checks are: <see cref="RunMode.Check"/>, or rehearsals of them.</param>
    /// <exception cref="Records.RecordFault">The record cannot be read.</exception>
    public static ShiftCheckState? State(RunReader runs, StationFile station, Plant plant, DateTimeOffset now, RunMode mode = RunMode.Check)
    {
        if (station.ShiftCheck is not { } rule) return null;
        var calendar = new ShiftCalendar(plant);
        var since = rule.IsDaily ? calendar.DayAt(now) : calendar.LastBegun(now);
        var run = runs
            .List(new RunFilter { Mode = mode, Station = station.Id, Sequence = rule.Sequence, Vin = rule.Reference, From = since.From })
            .FirstOrDefault(one => !one.IsPartial);
        var outcome = run?.End switch
        {
            null => ShiftCheckOutcome.Due,
            { IsInterrupted: false, Numbers.Verdict: Verdict.Pass } => ShiftCheckOutcome.Passed,
            _ => ShiftCheckOutcome.Failed,
        };
        return new ShiftCheckState(outcome, since, run, WordsFor(outcome, station, since, calendar, run));
    }

    /// <summary>What a run of a sequence at a station counts for, when it is no rehearsal.</summary>
    public static RunMode ModeOf(StationFile station, CheckedSequence sequence) => station.ShiftCheck?.Sequence == sequence.Id ? RunMode.Check : RunMode.Production;

    private static string WordsFor(ShiftCheckOutcome outcome, StationFile station, ShiftSpan since, ShiftCalendar calendar, RunSummary? run)
    {
        var check = $"the check of {(since.Shift is { } name ? $"the shift '{name}'" : "the day")}, since {calendar.LocalTime(since.From).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)},";
        var again = $"eol run --station {station.Place.File} --vin {station.ShiftCheck!.Reference}";
        return outcome switch
        {
            ShiftCheckOutcome.Passed => $"{check} was passed in run {run!.Run}",
            ShiftCheckOutcome.Failed => $"{check} was not passed: run {run!.Run} ended with {run.End!.Numbers.Verdict.Word()}{(run.End.IsInterrupted ? ", interrupted" : "")}; put the station right, then run: {again}",
            _ when run is not null => $"{check} broke off in run {run.Run}; run: {again}",
            _ => $"{check} has not been run; run: {again}",
        };
    }
}
