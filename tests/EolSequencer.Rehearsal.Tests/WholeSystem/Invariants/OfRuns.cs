using EolSequencer.Model.Events;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>What holds of every run, whatever happens to vehicle, devices, people and clock.</summary>
internal static class OfRuns
{
    private static readonly string[] Always = ["bus.return_control", "bus.default_session"];

    public static Invariant[] All { get; } =
    [
        Invariant.OfEach("always ran", AlwaysRan),
        Invariant.OfEach("always ran behind everything else", AlwaysRanLast),
        Invariant.OfEach("what a group switched on it switched off", SwitchedOff),
        Invariant.OfEach("events are numbered without a gap", Numbered),
        Invariant.OfEach("the wall clock moves no stamp", Stamped),
        Invariant.OfEach("a wall clock that was set is told", ClockSteps),
        Invariant.OfEach("attempts are numbered from 1", Attempts),
        Invariant.OfEach("a device that is back was lost", LostAndBack),
        Invariant.OfEach("a prompt is answered once, after it was asked", Prompts),
    ];

    // Seen at the devices: it has to run also when nothing can be recorded any more.
    private static IEnumerable<string> AlwaysRan(TestedVehicle vehicle)
    {
        var acts = vehicle.Tried.Select(one => one.Action).Where(action => action.StartsWith("bus.", StringComparison.Ordinal)).ToList();
        if (!acts.TakeLast(2).SequenceEqual(Always)) yield return $"last the bus was told: {string.Join(", ", acts.TakeLast(3))}";
    }

    private static IEnumerable<string> AlwaysRanLast(TestedVehicle vehicle)
    {
        if (vehicle.Result.Fault is not null) yield break;
        var of = vehicle.Plan.Always.Select(node => node.Id).ToList();
        var after = vehicle.Plan.AfterVerdict.Select(node => node.Id).ToHashSet();
        var judged = vehicle.Told.Select(one => one.Event).OfType<Judged>().Where(one => !after.Contains(one.Step)).ToList();
        if (!judged.TakeLast(of.Count).Select(one => one.Step).SequenceEqual(of)) yield return $"last was judged: {string.Join(", ", judged.TakeLast(of.Count).Select(one => one.Step))}";
        if (vehicle.Told.Select(one => one.Event).OfType<Stopped>().SingleOrDefault() is { } stopped && judged.TakeLast(of.Count).Any(one => one.N < stopped.N)) yield return "the run was stopped behind it";
    }

    private static IEnumerable<string> SwitchedOff(TestedVehicle vehicle)
    {
        var on = new HashSet<string>();
        foreach (var (_, action) in vehicle.Tried)
        {
            if (action.StartsWith("bus.lamp", StringComparison.Ordinal) && action.EndsWith(" = yes", StringComparison.Ordinal)) on.Add(action[..^" = yes".Length]);
            if (action.StartsWith("bus.lamp", StringComparison.Ordinal) && action.EndsWith(" = no", StringComparison.Ordinal)) on.Remove(action[..^" = no".Length]);
            if (action == Always[0])
            {
                foreach (var lamp in on) yield return $"{lamp} was left on until the end";
            }
        }
    }

    private static IEnumerable<string> Numbered(TestedVehicle vehicle)
    {
        for (var at = 0; at < vehicle.Told.Length; at++)
        {
            if (vehicle.Told[at].Event.N != at + 1) yield return $"event {vehicle.Told[at].Event.N} stands at {at + 1}";
        }
    }

    private static IEnumerable<string> Stamped(TestedVehicle vehicle)
    {
        if (vehicle.Told is not [{ Event: RunBegun begun, At: var start }, ..]) yield break;
        if (begun.Wall != vehicle.WallAt(start)) yield return $"it began at {begun.Wall:O}, the wall clock said {vehicle.WallAt(start):O}";
        foreach (var (next, at) in vehicle.Told)
        {
            if (next.At != (long)(at - start).TotalMicroseconds) yield return $"event {next.N} is stamped {next.At} µs, it was told at {(at - start).TotalMicroseconds} µs";
            if (next is Judged judged && (judged.Start < 0 || judged.Took < 0 || judged.Start + judged.Took > judged.At)) yield return $"{judged.Step} took from {judged.Start} µs for {judged.Took} µs and was judged at {judged.At} µs";
        }
    }

    // Small corrections are not told, so each step may leave as much out.
    private static IEnumerable<string> ClockSteps(TestedVehicle vehicle)
    {
        var told = vehicle.Told.Select(one => one.Event).OfType<ClockSet>().Aggregate(TimeSpan.Zero, (sum, set) => sum + (set.After - set.Before));
        var last = vehicle.Told[^1].At;
        var due = vehicle.Story.ClockSteps.Where(step => step.At < last).Aggregate(TimeSpan.Zero, (sum, step) => sum + step.By);
        if ((told - due).Duration() > TimeSpan.FromSeconds(2 * (vehicle.Story.ClockSteps.Length + 1))) yield return $"the clock was set by {due}, the run tells of {told}";
    }

    private static IEnumerable<string> Attempts(TestedVehicle vehicle)
    {
        var last = new Dictionary<string, int>();
        foreach (var judged in vehicle.Told.Select(one => one.Event).OfType<Judged>())
        {
            if (judged.Attempt != last.GetValueOrDefault(judged.Step) + 1) yield return $"attempt {judged.Attempt} of {judged.Step} comes behind {last.GetValueOrDefault(judged.Step)}";
            last[judged.Step] = judged.Attempt;
        }
    }

    private static IEnumerable<string> LostAndBack(TestedVehicle vehicle)
    {
        var lost = new HashSet<string>();
        foreach (var (next, _) in vehicle.Told)
        {
            if (next is DeviceLost one && !lost.Add(one.Role)) yield return $"{one.Role} was lost twice";
            if (next is DeviceBack back && !lost.Remove(back.Role)) yield return $"{back.Role} is back and was not lost";
        }
    }

    private static IEnumerable<string> Prompts(TestedVehicle vehicle)
    {
        var open = new HashSet<int>();
        var last = 0;
        foreach (var (next, _) in vehicle.Told)
        {
            switch (next)
            {
                case Asked asked:
                    if (asked.Prompt != ++last) yield return $"prompt {asked.Prompt} comes where {last} was due";
                    open.Add(asked.Prompt);
                    break;
                case Answered answered when !open.Remove(answered.Prompt):
                    yield return $"prompt {answered.Prompt} was answered and did not stand";
                    break;
                case AnswerRefused refused when !open.Contains(refused.Prompt):
                    yield return $"an answer to prompt {refused.Prompt} was refused and the prompt did not stand";
                    break;
            }
        }
    }
}
