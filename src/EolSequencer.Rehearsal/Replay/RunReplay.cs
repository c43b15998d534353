using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>
/// Judges a recorded run again by a revision of its sequence. It follows the events in their order, so each expression sees
/// what it saw then. Readings are taken as they were: what another value set, or another wait, would have made of them nobody
/// knows; a step that cannot be decided is taken to have gone on as it did.
/// </summary>
public sealed class RunReplay
{
    private readonly RunBegun _begun;
    private readonly PlanPair _plans;
    private readonly PlacedPlan _oldPlan;
    private readonly PlacedPlan _newPlan;
    private readonly RecordJudge _judge;
    private readonly ReplayHistory _history;
    private readonly AttemptReplay _attempts;
    private readonly OnlyIfReplay _onlyIf;
    private readonly Dictionary<string, StepTrack> _tracks = new(StringComparer.Ordinal);
    private readonly HashSet<string> _firstMisses = new(StringComparer.Ordinal);
    private (string Step, long At)? _oldStop;
    private (string Step, long At)? _newStop;
    private RunEnded? _ended;

    private RunReplay(Revision old, Revision now, RunBegun begun)
    {
        (_begun, _plans) = (begun, now.PairFor(old, begun));
        (_oldPlan, _newPlan) = (_plans.Old, _plans.New);
        _judge = new RecordJudge(begun.Order);
        _history = new ReplayHistory(_oldPlan, _newPlan);
        _attempts = new AttemptReplay(begun.Order, _judge, _history);
        _onlyIf = new OnlyIfReplay(_judge, _history);
    }

    /// <param name="old">The sequence as the run had it.</param>
    /// <param name="now">The sequence to judge by.</param>
    /// <param name="events">The run's events, the first one first.</param>
    public static ReplayedRun Of(Revision old, Revision now, IReadOnlyList<RunEvent> events)
    {
        var replay = new RunReplay(old, now, (RunBegun)events[0]);
        foreach (var next in events) replay.Add(next);
        return replay.Result();
    }

    private void Add(RunEvent next)
    {
        switch (next)
        {
            case SeriesRecorded { Capture: not null } trace: Add(trace); break;
            case SeriesRecorded series when Track(series.Step) is { } track: track.Series = series; break;
            case PassedOver passedOver when Track(passedOver.Step) is { } track: track.ByPerson = true; break;
            case Answered { Answer: "stop" } stop when Track(stop.Step) is { } track: track.ByPerson = true; break;
            case NotNeeded notNeeded when Track(notNeeded.Step) is { } track: Add(track); break;
            case Judged judged when Track(judged.Step) is { } track: Add(track, judged); break;
            case RunEnded ended: _ended = ended; break;
        }
    }

    private void Add(SeriesRecorded trace)
    {
        if (_newPlan.Capture(trace.Step, trace.Channel) is { } capture) _judge.NoteTrace(trace.Step, RecordedSeries.Trace(trace, capture.Channel.Shape));
    }

    private void Add(StepTrack track)
    {
        track.Was = StepStanding.NotNeeded;
        if (track.New is not { } now || Differences(track) is not { } differences) return;
        var (isNeeded, why) = _onlyIf.Decide(now, differences, wasNeeded: false);
        if (isNeeded == false) track.Stand(StepStanding.NotNeeded, null);
        else track.Stand(StepStanding.Undecidable, why);
        _history.Note(now.Id, isNeeded is not null, changed: isNeeded != false);
    }

    private void Add(StepTrack track, Judged judged)
    {
        var attempt = new RecordedAttempt(judged, track.Series, track.ByPerson);
        var isMade = track.BeginAttempt();
        if (track.Was is null && judged.Counted > Verdict.Pass) _firstMisses.Add(judged.Step);
        if (track.EndedAsRecorded(judged) == FlowStep.Stop && track.Old is { RunsAlways: false }) _oldStop ??= (judged.Step, judged.At);
        if (isMade && track is { Old: { } old, New: { } now } && Differences(track) is { } differences) Judge(track, old, now, differences, attempt);
        (track.ByPerson, track.Series) = (false, null);
    }

    private void Judge(StepTrack track, PlacedStep old, PlacedStep now, StepDifferences differences, RecordedAttempt attempt)
    {
        var judged = attempt.Judged;
        if (!now.RunsAlways && _newStop is { } stop && stop.Step != now.Id && judged.At > stop.At && judged.Start >= stop.At)
        {
            track.Stand(StepStanding.NotReached, $"'{stop.Step}' would have stopped the run");
            return;
        }

        var (isNeeded, notNeeded) = _onlyIf.Decide(now, differences, wasNeeded: true);
        if (isNeeded == false)
        {
            track.Stand(StepStanding.NotNeeded, null);
            _history.Note(now.Id, decided: true, changed: true);
            return;
        }

        var end = isNeeded is null ? Replayable.Undecidable(notNeeded!) : EndOf(old, now, differences, attempt);
        if (end.End is not { } found)
        {
            track.Stand(StepStanding.Undecidable, end.Why);
            _history.Note(now.Id, decided: false, changed: true);
            return;
        }

        var again = _judge.Judge(now.Planned, found);
        var standing = new StepStanding(StandingKind.Judged, again.Counted, again.Criteria, again.Fault ?? judged.Detail);
        var flow = track.Ended(standing, again.Measured, judged);
        _history.Note(now.Id, decided: true, changed: again.Counted != judged.Counted || !IsSameValue(again.Criteria, judged.Criteria));
        if (flow == FlowStep.Stop && !now.RunsAlways) _newStop ??= (now.Id, judged.At);
    }

    /// <summary>How the attempt would have ended; what goes on when the run stops is cut short.</summary>
    private Replayable EndOf(PlacedStep old, PlacedStep now, StepDifferences differences, RecordedAttempt attempt)
    {
        var judged = attempt.Judged;
        if (!now.RunsAlways && _newStop is { } stop && stop.Step != now.Id && judged.At > stop.At) return new RecordedEnd(Ending.Stopped, TimeSpan.FromMicroseconds(stop.At - judged.Start));
        if (attempt.IsCut && _oldStop is { } cut && cut.Step != old.Id && judged.At >= cut.At && _newStop is null && !old.RunsAlways) return Replayable.Undecidable("it was cut short when the run stopped");
        return _attempts.EndOf(old, now, differences, attempt);
    }

    private ReplayedRun Result()
    {
        foreach (var track in _tracks.Values) track.End();
        foreach (var group in _newPlan.Retrying.Concat(_oldPlan.Retrying).DistinctBy(group => group.Id)) EndGroup(group.Id);
        var notReached = _ended?.NotReached.ToHashSet(StringComparer.Ordinal) ?? [];
        var steps = ImmutableArray.CreateBuilder<ReplayedStep>();
        foreach (var now in _newPlan.Steps) steps.Add(Replayed(now, notReached));
        foreach (var old in _oldPlan.Steps.Where(old => _newPlan.Find(old.Id) is null)) steps.Add(Gone(old, notReached));
        var was = _ended?.RollUp ?? RollUp.Of(steps.Where(step => step.Was.IsCounting).Select(step => step.Was.Counted));
        var isWhole = _ended is { Interrupted: false } && _begun.OnlySteps.IsEmpty;
        return new ReplayedRun(_begun, steps.ToImmutable(), was, isWhole) { WasFirstTimeThrough = isWhole && was.Verdict == Verdict.Pass && _firstMisses.Count == 0 };
    }

    private ReplayedStep Replayed(PlacedStep now, HashSet<string> notReached)
    {
        var track = _tracks.GetValueOrDefault(now.Id);
        var old = _oldPlan.Find(now.Id);
        if (old is null)
        {
            return _begun.NotApplicable.Contains(now.Id)
                ? new ReplayedStep(now.Id, StepStanding.NotApplicable, StepStanding.Undecidable, "it did not apply then, so nothing was recorded")
                : new ReplayedStep(now.Id, StepStanding.Absent, StepStanding.Undecidable, "it was added, so nothing was recorded");
        }

        if (track?.Was is { } was && !notReached.Contains(now.Id)) return new ReplayedStep(now.Id, was, track.Is ?? StepStanding.Undecidable, track.Why) { FirstIs = track.FirstIs };
        var differences = _plans.Differences(old, now);
        var why = _oldStop is not null && _newStop is null && !now.RunsAlways ? $"it was not reached then: '{_oldStop.Value.Step}' stopped the run"
            : differences.Require || differences.OnlyIf ? "it was not reached then"
            : null;
        return new ReplayedStep(now.Id, StepStanding.NotReached, why is null ? StepStanding.NotReached : StepStanding.Undecidable, why);
    }

    private ReplayedStep Gone(PlacedStep old, HashSet<string> notReached)
    {
        var was = notReached.Contains(old.Id) ? StepStanding.NotReached : _tracks.GetValueOrDefault(old.Id)?.Was ?? StepStanding.NotReached;
        return _newPlan.NotApplicable.Contains(old.Id)
            ? new ReplayedStep(old.Id, was, StepStanding.NotApplicable, "it does not apply to this vehicle any more")
            : new ReplayedStep(old.Id, was, StepStanding.Absent, "it was removed");
    }

    /// <summary>A group that is tried again as a whole: what its steps come to decides whether it is.</summary>
    private void EndGroup(string group)
    {
        var tracks = _newPlan.Steps.Where(step => step.Around.Any(around => around.Id == group)).Select(step => _tracks.GetValueOrDefault(step.Id)).OfType<StepTrack>().ToList();
        var rule = _newPlan.Retrying.FirstOrDefault(one => one.Id == group) is { } now ? PlacedStep.NodeOf(now).Retry : null;
        var isOnce = tracks.TrueForAll(track => track.Rounds <= 1);
        var worst = Verdicts.Worst(tracks.Select(track => track.Is).OfType<StepStanding>().Where(one => one.Kind == StandingKind.Judged).Select(one => one.Counted));
        var isSame = !tracks.Exists(track => track.HasChanged) && RuleText(_oldPlan, group) == RuleText(_newPlan, group);
        if (isSame || (isOnce && (rule is null || !rule.On.Contains(worst)))) return;
        foreach (var track in tracks) track.Stand(StepStanding.Undecidable, "its group is tried again on what its steps come to");
    }

    private static string RuleText(PlacedPlan plan, string group) =>
        plan.Retrying.FirstOrDefault(one => one.Id == group) is { } found ? StructureText.Of(found.Arguments, PlacedStep.NodeOf(found).Retry) : "";

    private StepTrack? Track(string id)
    {
        if (_tracks.TryGetValue(id, out var known)) return known;
        var (old, now) = (_oldPlan.Find(id), _newPlan.Find(id));
        return old is null && now is null ? null : _tracks[id] = new StepTrack(old, now);
    }

    private StepDifferences? Differences(StepTrack track) =>
        track is { Old: { } old, New: { } now } ? track.Differences ??= _plans.Differences(old, now) : null;

    private static bool IsSameValue(ImmutableArray<CriterionResult> one, ImmutableArray<CriterionResult> other) =>
        one.Length == other.Length && one.Zip(other).All(pair => pair.First.Value == pair.Second.Value && pair.First.Unit == pair.Second.Unit);
}
