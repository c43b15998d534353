using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary><c>sample</c> again: its readings were recorded, so they can be reduced otherwise.</summary>
internal static class SampleReplay
{
    public static Replayable EndOf(Step old, PlannedStep now, StepAction.Sample sample, StepDifferences differences, LimitChange limit, RecordedAttempt attempt)
    {
        if (limit.IsLonger && attempt.Took >= limit.Old || limit.IsShorter && attempt.Took > limit.New) return Replayable.Undecidable("its readings were cut short by another limit");
        if (attempt.Series is not { } series)
        {
            return attempt.IsFault && !differences.Expect ? new RecordedEnd(Ending.ExpressionFault, attempt.Took) : Replayable.Undecidable("its readings were not recorded");
        }

        var wasMissing = attempt.Judged.Cause is not null;
        var before = ((StepAction.Sample)old.Action).MayMiss;
        var (isTaken, why) = wasMissing
            ? sample.MayMiss <= before ? (false, null) : Enough(series.Points, sample)
            : sample.MayMiss >= before ? (true, null) : Enough(series.Points, sample);
        if (why is not null) return Replayable.Undecidable(why);
        if (isTaken && RecordJudge.Reduce(RecordedSeries.Numbers(series, sample.Description.Shape), sample.Reduce) is { } value)
        {
            return new RecordedEnd(Ending.ValueTaken, attempt.Took) { Value = value };
        }

        if (attempt.Judged.Cause is { } cause) return MissingRule.EndOf(attempt.Judged.Measured, cause, old, now.Step, limit, attempt.Took);
        return MissingRule.Fails(now.Step) ? Replayable.Undecidable(MissingRule.NotAsked) : new RecordedEnd(Ending.Missing, attempt.Took);
    }

    /// <summary>Whether no more readings are missing than may be; readings whose turn was missed are known only when their number was fixed.</summary>
    private static (bool IsEnough, string? Why) Enough(IReadOnlyCollection<Model.Events.SeriesPoint> points, StepAction.Sample sample)
    {
        if (sample is not { Until: null, For: Operand.Constant { Value: Model.Values.NumberValue length }, Every: Operand.Constant { Value: Model.Values.NumberValue every } }
            || !length.TryIn(every.Unit, out var whole))
        {
            return (false, "how many of its readings are missing was not recorded");
        }

        var due = (int)Math.Ceiling(whole / every.Number);
        return (due - points.Count(point => point.Value is not null) <= sample.MayMiss, null);
    }
}
