using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>How one recorded attempt would have ended under another revision of its step, before anything is judged.</summary>
/// <param name="history">What the record has of the steps before.</param>
internal sealed class AttemptReplay(Order order, RecordJudge judge, ReplayHistory history)
{
    /// <summary>The end, for the judge of the revision to judge.</summary>
    public Replayable EndOf(PlacedStep old, PlacedStep now, StepDifferences differences, RecordedAttempt attempt)
    {
        if (differences.Deed is { } deed) return Replayable.Undecidable(deed);
        if (differences.Require) return Replayable.Undecidable("what must hold meanwhile (require) reads otherwise");
        var limit = LimitChange.Between(old.Planned, now.Planned, order, differences.Within);
        if (limit is null) return Replayable.Undecidable("its time limit is computed otherwise");
        if (attempt.IsCut) return CutEnd(now.Planned.Step, limit, attempt);
        return now.Planned.Step.Action switch
        {
            StepAction.Await or StepAction.Ask { Until: not null } => ConditionEnd(old.Planned.Step, now.Planned.Step, differences, limit, attempt),
            StepAction.Compute compute => new ComputeReplay(judge, history).EndOf(now.Planned, compute, differences, limit, attempt),
            StepAction.Sample sample => SampleReplay.EndOf(old.Planned.Step, now.Planned, sample, differences, limit, attempt),
            StepAction.Ask => new RecordedEnd(Ending.Confirmed, attempt.Took),
            StepAction.Judge => new RecordedEnd(attempt.Judged.Measured == Verdict.Pass ? Ending.AnsweredOk : Ending.AnsweredNotOk, attempt.Took),
            StepAction.Wait => new RecordedEnd(Ending.TimeOver, attempt.Took),
            _ => ValueEnd(old.Planned.Step, now.Planned, differences, limit, attempt),
        };
    }

    private static Replayable CutEnd(Step now, LimitChange limit, RecordedAttempt attempt) =>
        now.Action.Prompt is not null && limit.IsLonger && !attempt.ByPerson && attempt.Took >= limit.Old
            ? Replayable.Undecidable("nobody answered in time, and the limit is longer now")
            : new RecordedEnd(Ending.Stopped, attempt.Took);

    private Replayable ConditionEnd(Step old, Step now, StepDifferences differences, LimitChange limit, RecordedAttempt attempt)
    {
        var judged = attempt.Judged;
        if (attempt.IsFault) return differences.Since || differences.Expect ? Replayable.Undecidable("an expression had no value") : new RecordedEnd(Ending.ExpressionFault, attempt.Took);
        var wasTrue = judged.Measured == Verdict.Pass || attempt.Time is not null;
        if (!wasTrue)
        {
            if (limit.IsChanged) return Replayable.Undecidable($"its condition was not met in time, and the limit is {(limit.IsLonger ? "longer" : "shorter")} now");
            if (judged.Cause is not { } cause) return new RecordedEnd(Ending.ConditionFalseAtLimit, attempt.Took);
            return MissingRule.Of(judged.Measured, cause, old.MissingFails, now.MissingFails) is { } verdict
                ? new RecordedEnd(Ending.ConditionUnknownAtLimit, attempt.Took) { AsMissing = verdict }
                : Replayable.Undecidable(MissingRule.NotAsked);
        }

        if (limit.IsShorter && attempt.Took > limit.New) return Replayable.Undecidable("its condition was met later than the limit is now; whether it was false or unknown then was not recorded");
        if (now.Takes is null) return new RecordedEnd(Ending.ConditionTrue, attempt.Took);
        if (CountedTime(old, now, differences, attempt) is not { } seconds) return Replayable.Undecidable("the moment from which its time counts (since) was not recorded");
        return new RecordedEnd(Ending.ConditionTrue, attempt.Took) { Counted = seconds };
    }

    private decimal? CountedTime(Step old, Step now, StepDifferences differences, RecordedAttempt attempt)
    {
        if (attempt.Time is { Value: not null } time && !differences.Since)
        {
            var value = (NumberValue)RecordedValue.Of(time, ValueKind.Number)!;
            return value.TryIn(UnitTable.Second, out var seconds) ? seconds : null;
        }

        if (now.Since is not null) return null;
        var lasting = old.Lasting is { } written && OrderScope.Known(written, order, Model.Expressions.Arguments.None) is NumberValue length && length.TryIn(UnitTable.Second, out var lasts) ? lasts : 0;
        return old.Lasting is not null && lasting == 0 ? null : (attempt.Judged.Took / 1_000_000m) - lasting;
    }

    private static Replayable ValueEnd(Step old, PlannedStep now, StepDifferences differences, LimitChange limit, RecordedAttempt attempt)
    {
        var judged = attempt.Judged;
        if (attempt.IsFault)
        {
            return differences.Expect || limit.IsChanged ? Replayable.Undecidable("an expression had no value, so none was recorded") : new RecordedEnd(Ending.ExpressionFault, attempt.Took);
        }

        if (limit.IsShorter && attempt.Took > limit.New) return TooLate(now.Step, attempt);
        if (!now.Indexes.IsEmpty) return EachEnd(old, now, limit, attempt);
        if (judged.Cause is { } cause) return MissingRule.EndOf(judged.Measured, cause, old, now.Step, limit, attempt.Took);
        if (judged.Criteria.IsEmpty) return new RecordedEnd(Ending.Confirmed, attempt.Took);
        if (RecordedValue.Of(judged.Criteria[0], RecordedValue.ShapeOf(now.Step.Action).Kind) is not { } value) return Replayable.Undecidable("its value was not recorded");
        var serial = now.Step.Serial is { } rule ? SerialAsFound(old, now, rule, judged) : null;
        return now.Step.Serial is not null && serial is null
            ? Replayable.Undecidable("whether its serial was on another vehicle then was not asked")
            : new RecordedEnd(Ending.ValueTaken, attempt.Took) { Value = value, Serial = serial };
    }

    /// <summary>Where a serial was then is taken as it was found; for a part of another name nobody asked.</summary>
    private static CriterionResult? SerialAsFound(Step old, PlannedStep now, SerialRule rule, Judged judged) =>
        old.Serial is { } before && PartName.OfStep(now.Id, before.Part) == PartName.OfStep(now.Id, rule.Part)
            ? judged.Criteria.FirstOrDefault(criterion => criterion.Of == SerialCheck.Criterion)
            : null;

    private static Replayable TooLate(Step now, RecordedAttempt attempt)
    {
        if (now.Action.Prompt is not null) return new RecordedEnd(Ending.NoAnswer, attempt.Took);
        return MissingRule.Fails(now)
            ? Replayable.Undecidable("its answer came later than the limit is now; whether others answered on the link was not asked")
            : new RecordedEnd(Ending.Missing, attempt.Took) { AsMissing = Verdict.Error };
    }

    private static Replayable EachEnd(Step old, PlannedStep now, LimitChange limit, RecordedAttempt attempt)
    {
        var kind = RecordedValue.ShapeOf(now.Step.Action).Kind;
        var found = new (string, Value?, Verdict)[now.Indexes.Length];
        for (var at = 0; at < found.Length; at++)
        {
            var index = now.Indexes[at];
            if (attempt.Judged.Criteria.FirstOrDefault(criterion => criterion.Of == index) is not { } criterion) return Replayable.Undecidable($"{index} was not read");
            var value = RecordedValue.Of(criterion, kind);
            var verdict = criterion.Verdict;
            if (value is null)
            {
                var end = MissingRule.EndOf(criterion.Verdict, attempt.Judged.Cause ?? MissingCause.Silent, old, now.Step, limit, attempt.Took);
                if (end.End is not { } missing) return end;
                verdict = missing.AsMissing;
            }

            found[at] = (index, value, verdict);
        }

        return new RecordedEnd(Ending.ValueTaken, attempt.Took) { ByIndex = [.. found] };
    }
}
