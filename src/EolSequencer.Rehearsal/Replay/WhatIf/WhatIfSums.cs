using System.Collections.Immutable;
using System.Runtime.InteropServices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>What one thread has counted.</summary>
internal sealed class WhatIfSums
{
    private readonly Dictionary<string, StepCounts> _steps = new(StringComparer.Ordinal);
    private readonly Dictionary<string, long> _leftOut = new(StringComparer.Ordinal);
    private readonly List<(int At, RunChange Change)> _changed = [];
    private readonly List<(int At, string Vin, bool Was, bool? Is)> _first = [];
    private (int At, string Text)? _trouble;
    private long _runs;
    private long _judged;
    private long _troubled;

    public void Add(int at, ReplayedRun run)
    {
        _runs++;
        foreach (var step in run.Steps)
        {
            ref var counts = ref CollectionsMarshal.GetValueRefOrAddDefault(_steps, step.Step, out _);
            (counts ??= new StepCounts()).Add(step);
            if (step.Is.Kind == StandingKind.Judged) _judged++;
        }

        var vin = run.Begun.Order.Vin.Text;
        if (run.IsWhole) _first.Add((at, vin, run.WasFirstTimeThrough, run.IsFirstTimeThrough));
        var changed = run.Steps.Where(step => step.IsChanged).Select(step => step.Step).ToImmutableArray();
        if (changed.Length > 0) _changed.Add((at, new RunChange(run.Begun.Run, vin, run.Was.Verdict, run.Is.Verdict, run.Verdict is not null, changed, run.Undecidable)));
    }

    public void LeaveOut(string why) => _leftOut[why] = _leftOut.GetValueOrDefault(why) + 1;

    public void NoteTrouble(int at, string run, string trouble)
    {
        _troubled++;
        if (_trouble is null || at < _trouble.Value.At) _trouble = (at, $"run {run}: {trouble}");
    }

    /// <summary>All together; the same whatever thread counted what.</summary>
    public static WhatIfResult Of(IReadOnlyCollection<WhatIfSums> all)
    {
        var steps = new Dictionary<string, StepCounts>(StringComparer.Ordinal);
        var leftOut = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var (step, counts) in all.SelectMany(sums => sums._steps))
        {
            if (!steps.TryGetValue(step, out var sum)) steps[step] = sum = new StepCounts();
            sum.Add(counts);
        }

        foreach (var (why, count) in all.SelectMany(sums => sums._leftOut)) leftOut[why] = leftOut.GetValueOrDefault(why) + count;
        return new WhatIfResult
        {
            Runs = all.Sum(sums => sums._runs),
            Steps = all.Sum(sums => sums._judged),
            ByStep = steps.ToImmutableSortedDictionary(StringComparer.Ordinal),
            Changed = [.. all.SelectMany(sums => sums._changed).OrderBy(one => one.At).Select(one => one.Change)],
            FirstTimeThrough = FirstOf(all.SelectMany(sums => sums._first).OrderBy(one => one.At)),
            LeftOut = leftOut.ToImmutableSortedDictionary(StringComparer.Ordinal),
            Trouble = all.Select(sums => sums._trouble).Where(trouble => trouble is not null).OrderBy(trouble => trouble!.Value.At).FirstOrDefault()?.Text,
            Troubled = all.Sum(sums => sums._troubled),
        };
    }

    private static FirstTimeThrough FirstOf(IEnumerable<(int At, string Vin, bool Was, bool? Is)> runs)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        long was = 0, gained = 0, lost = 0, openThrough = 0, openOthers = 0;
        foreach (var (_, vin, before, after) in runs)
        {
            if (!seen.Add(vin)) continue;
            if (before) was++;
            switch (before, after)
            {
                case (false, true): gained++; break;
                case (true, false): lost++; break;
                case (true, null): openThrough++; break;
                case (false, null): openOthers++; break;
            }
        }

        return new FirstTimeThrough(seen.Count, was, gained, lost, openThrough, openOthers);
    }
}
