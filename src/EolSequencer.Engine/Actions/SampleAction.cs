using System.Collections.Immutable;
using EolSequencer.Engine.Capturing;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Actions;

/// <summary>
/// <c>sample</c>: readings at 0, every, 2·every … of the step's clock, reduced to one value. A reading that could not
/// be taken at its moment is missing; none is stamped anew to look regular.
/// </summary>
internal static class SampleAction
{
    public static async ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Sample sample)
    {
        var run = attempt.Run;
        var every = Operands.Duration(sample.Every, attempt.Scope);
        var length = sample.For is { } lasts ? Operands.Duration(lasts, attempt.Scope) : (TimeSpan?)null;
        var points = ImmutableArray.CreateBuilder<SeriesPoint>();
        var values = new List<NumberValue>();
        var missed = 0;
        Reading newestMissing = default;

        using var until = UntilWatch(attempt, sample, out var isOver);
        for (var count = 0L; !isOver() && (length is null || count * every < length); count++)
        {
            var late = run.Between(attempt.Start, run.Now) - count * every;
            if (late < TimeSpan.Zero) await Pause.ForAsync(-late, run.Time, attempt.Halt.Token);
            if (isOver()) break;
            if (late >= every)
            {
                missed++;
                continue;
            }

            var reading = await attempt.ReadAsync(sample.Channel, sample.Description);
            points.Add(SeriesPoints.Of(run.Log.MicrosecondsAt(reading.Stamp), reading));
            if (reading.Value is NumberValue number) values.Add(number);
            else (missed, newestMissing) = (missed + 1, reading);
            if (attempt.Ends.IsCancellationRequested) break;
        }

        if (length is { } whole && !isOver() && whole - run.Between(attempt.Start, run.Now) is { Ticks: > 0 } rest)
        {
            await Pause.ForAsync(rest, run.Time, attempt.Halt.Token);
        }

        run.Log.Append((n, at) => new SeriesRecorded { N = n, At = at, Step = attempt.Planned.Id, Channel = sample.Channel.ToString(), Points = points.DrainToImmutable() });
        _ = attempt.Readings; // The series holds them.
        if (missed <= sample.MayMiss && Reductions.Of(values, sample.Reduce) is { } value) return attempt.Found(value, run.Now);
        var end = newestMissing.Missing is null
            ? new AttemptEnd(Ending.Missing, run.Now) { Cause = MissingCause.Late }
            : await attempt.MissingAsync(sample.Channel, sample.Description, newestMissing);
        return end with { Detail = $"{missed} of {missed + values.Count} readings are missing{(end.Detail is null ? "" : ": " + end.Detail)}" };
    }

    private static ConditionWatch? UntilWatch(Attempt attempt, StepAction.Sample sample, out Func<bool> isOver)
    {
        isOver = () => false;
        if (sample.Until is null) return null;
        var watch = new ConditionWatch(attempt.Run, attempt.Scope, attempt.Planned.Id, attempt.Start, _ => { });
        var condition = watch.Add(sample.Until, attempt.Planned.Arguments);
        isOver = () => condition.IsTrue == true;
        watch.Begin(null);
        return watch;
    }
}
