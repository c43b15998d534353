using System.Collections.Immutable;
using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Judging;

/// <summary>
/// Judges the attempts of one run from what a record holds of them, by the code that judges in a run. Feed it in the order
/// of the record: later expressions see the results and traces of what came before.
/// </summary>
public sealed class RecordJudge(Order order)
{
    private readonly ResultBook _results = new();

    /// <summary>Judges an attempt; its result is then what expressions see of the step.</summary>
    public JudgedFromRecord Judge(PlannedStep planned, RecordedEnd found)
    {
        var scope = ScopeOf(planned);
        AttemptEnd end;
        try
        {
            end = EndOf(planned, scope, found);
        }
        catch (ExpressionFault fault)
        {
            end = new AttemptEnd(Ending.ExpressionFault, 0) { Detail = fault.Message };
        }

        var (measured, counted) = StepVerdicts.Of(planned.Step, end);
        _results.Judge(planned.Id, new ResultView(end.Value, counted, found.Took));
        foreach (var (index, value) in end.ByIndex) _results.NoteIndex(planned.Id, index, new ResultView(value, counted, found.Took));
        return new JudgedFromRecord(end.Criteria, measured, counted, end.Detail);
    }

    /// <summary>The value of an expression of a node that names no channel.</summary>
    /// <exception cref="ExpressionFault">There is none.</exception>
    public Value Evaluate(Expression expression, PlannedNode node) => ScopeOf(node).Evaluate(expression);

    /// <summary>The value of an operand of a step.</summary>
    /// <exception cref="ExpressionFault">There is none, or it is no time.</exception>
    public TimeSpan Duration(Operand operand, PlannedNode node) => Operands.Duration(operand, ScopeOf(node));

    /// <summary>A group has been captured.</summary>
    public void NoteTrace(string group, Trace trace) => _results.NoteTrace(group, trace);

    /// <summary>The readings of a <c>sample</c> as one value; null when there is none to make it of.</summary>
    public static NumberValue? Reduce(IReadOnlyList<NumberValue> readings, Reduction reduction) => Reductions.Of(readings, reduction);

    private RunScope ScopeOf(PlannedNode node) => new(order, _results, node.Id, node.Arguments);

    private static AttemptEnd EndOf(PlannedStep planned, RunScope scope, RecordedEnd found)
    {
        if (!found.ByIndex.IsDefaultOrEmpty) return EachOf(planned, scope, found);
        if (found.Value is { } value)
        {
            ImmutableArray<CriterionResult> own = [StepJudging.Value(planned, scope, "", value)];
            return new AttemptEnd(Judged(planned), 0) { Value = value, Criteria = found.Serial is { } serial ? own.Add(serial) : own };
        }

        var time = found.Counted is { } seconds ? StepJudging.Time(planned, scope, seconds) : null;
        return new AttemptEnd(found.Ending, 0) { Criteria = time is null ? [] : [time], AsMissing = found.AsMissing };
    }

    private static AttemptEnd EachOf(PlannedStep planned, RunScope scope, RecordedEnd found)
    {
        var criteria = ImmutableArray.CreateBuilder<CriterionResult>(found.ByIndex.Length);
        var values = ImmutableArray.CreateBuilder<(string, Value)>(found.ByIndex.Length);
        foreach (var (index, value, asMissing) in found.ByIndex)
        {
            if (value is null)
            {
                criteria.Add(StepJudging.Missing(planned, index, asMissing));
                continue;
            }

            values.Add((index, value));
            criteria.Add(StepJudging.Value(planned, scope, index, value));
        }

        var isMissing = values.Count < found.ByIndex.Length;
        return new AttemptEnd(isMissing ? Ending.Missing : Judged(planned), 0)
        {
            ByIndex = values.ToImmutable(),
            Criteria = criteria.MoveToImmutable(),
            AsMissing = isMissing ? found.ByIndex.Where(one => one.Value is null).Max(one => one.AsMissing) : Verdict.Error,
        };
    }

    private static Ending Judged(PlannedStep planned) => planned.Step.Expect is null ? Ending.ValueTaken : Ending.ValueJudged;
}
