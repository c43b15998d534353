using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Stations;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>Writes runs of one vehicle by what their steps count for.</summary>
internal static class Story
{
    /// <summary>A run from its first to its last event.</summary>
    /// <param name="found">Steps with what each attempt counts for, in order.</param>
    /// <param name="parts">Parts whose serials it finds after them.</param>
    /// <param name="of">The whole run that it repeats; null: it is a whole run.</param>
    public static string Run(
        StationHold station, IEnumerable<(string Step, Verdict Counted)> found, string? of = null, string vin = SampleRun.Vin, string kind = "startup",
        RunMode mode = RunMode.Production, ImmutableArray<string> notReached = default, ImmutableArray<string> notCounted = default, bool ends = true, ImmutableArray<string> only = default,
        Func<RunBegun, RunBegun>? with = null, IEnumerable<(string Part, string Serial)>? parts = null)
    {
        var journal = station.BeginRun();
        var begun = (RunBegun)SampleRun.Of(journal.Run, mode, vin: vin, kind: kind)[0] with { RetestOf = of, OnlySteps = only.IsDefault ? of is null ? [] : ["part"] : only };
        journal.Append(with?.Invoke(begun) ?? begun);
        var n = 1;
        var attempts = new Dictionary<string, int>();
        var last = new Dictionary<string, Verdict>();
        foreach (var (step, counted) in found)
        {
            attempts[step] = attempts.GetValueOrDefault(step) + 1;
            last[step] = counted;
            journal.Append(SampleRun.Read(++n, 1000 * n, step, "1.82", counted) with { Attempt = attempts[step] });
        }

        foreach (var (part, serial) in parts ?? []) journal.Append(SampleRun.Serial(++n, 1000 * n, part, serial));
        if (notReached.IsDefault) notReached = [];
        if (notCounted.IsDefault) notCounted = [];
        var rollUp = RollUp.Of(last.Where(one => !notCounted.Contains(one.Key)).Select(one => one.Value).Concat((parts ?? []).Select(_ => Verdict.Pass)).Concat(notReached.Select(_ => Verdict.Inconclusive)));
        if (ends) journal.Append(new RunEnded { N = ++n, At = 1000 * n, RollUp = rollUp, Interrupted = !notReached.IsEmpty, NotReached = notReached, NotCounted = notCounted });
        return journal.Run;
    }
}
