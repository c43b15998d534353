using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Benchmarks.WhatIf;

/// <summary>
/// A simulated run as another vehicle would have had it: its plain readings are varied, judged again by the engine, and what is
/// computed from them with them. Time, prompts and series stay; a varied reading has no raw bytes, which would say another value.
/// </summary>
internal sealed class VariedRun(CheckedSequence sequence, Scatter scatter)
{
    public IEnumerable<RunEvent> Of(IReadOnlyList<RunEvent> events, string run, int vehicle, DateTimeOffset wall)
    {
        var begun = (RunBegun)events[0];
        var own = new HistoryVehicle(begun.Order, vehicle + 100_000);
        var plan = Planner.For(sequence, own.Order);
        var steps = plan.Counting.ToDictionary(step => step.Id, StringComparer.Ordinal);
        var judge = new RecordJudge(own.Order);
        var counted = new Dictionary<string, Verdict>(StringComparer.Ordinal);
        foreach (var next in events)
        {
            switch (next)
            {
                case RunBegun:
                    yield return begun with { Run = run, Order = own.Order, Wall = wall, Seed = null };
                    break;
                case Judged judged:
                    var varied = steps.TryGetValue(judged.Step, out var planned) ? Vary(own.Of(judged), planned, judge, vehicle) : own.Of(judged);
                    if (planned is not null) counted[judged.Step] = varied.Counted;
                    yield return varied;
                    break;
                case Answered answered:
                    yield return answered with { Answer = own.Of(answered.Answer)! };
                    break;
                case RunEnded ended:
                    yield return ended with { RollUp = RollUp.Of(counted.Values.Concat(ended.NotReached.Select(_ => Verdict.Inconclusive))) };
                    break;
                default:
                    yield return next;
                    break;
            }
        }
    }

    private Judged Vary(Judged judged, PlannedStep planned, RecordJudge judge, int vehicle)
    {
        var took = TimeSpan.FromMicroseconds(judged.Took);
        var step = planned.Step;
        if (step.Action is StepAction.Compute compute && judged.Criteria is [_])
        {
            return Computed(compute, planned, judge) is { } value ? Judged(judged, judge.Judge(planned, new RecordedEnd(Ending.ValueTaken, took) { Value = value })) : judged;
        }

        if (step.Action is not StepAction.Read || judged.Cause is not null || judged.Criteria.IsEmpty || judged.Criteria.Any(one => one.IsText || one.Value is null)) return judged;
        var isVaried = judged.Criteria.All(one => one is { Low: not null, High: not null } && one.Low != one.High) && step is { OnFail: OnFail.Continue, Retry: null };
        var values = judged.Criteria.Select(one => (Value)new NumberValue(
            isVaried ? scatter.Of(one, judged.Step, vehicle) : decimal.Parse(one.Value!, CultureInfo.InvariantCulture),
            one.Unit is null ? null : UnitTable.Required(one.Unit))).ToList();
        var end = planned.Indexes.IsEmpty
            ? new RecordedEnd(Ending.ValueTaken, took) { Value = values[0] }
            : new RecordedEnd(Ending.ValueTaken, took) { ByIndex = [.. judged.Criteria.Zip(values, (one, value) => (one.Of, (Value?)value, Verdict.None))] };
        var again = judge.Judge(planned, end);
        return isVaried ? Judged(judged, again) with { Readings = [.. judged.Readings.Select(reading => reading with { Raw = null })] } : judged;
    }

    /// <summary>The value anew; null when it is made of something that is not varied.</summary>
    private static Value? Computed(StepAction.Compute compute, PlannedStep planned, RecordJudge judge)
    {
        if (!compute.Expression.Channels.IsEmpty || !compute.Expression.Traces.IsEmpty) return null;
        try
        {
            var value = judge.Evaluate(compute.Expression, planned);
            return value is NumberValue { Unit: null } bare && compute.Unit is not null ? bare with { Unit = compute.Unit } : value;
        }
        catch (ExpressionFault)
        {
            return null;
        }
    }

    private static Judged Judged(Judged judged, JudgedFromRecord again) =>
        judged with { Criteria = again.Criteria, Measured = again.Measured, Counted = again.Counted, Detail = again.Fault ?? judged.Detail };
}
