using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>The value that an event holds as text.</summary>
public static class RecordedValue
{
    /// <summary>The value of a criterion; null when it is missing.</summary>
    /// <param name="kind">The kind of value that the step finds.</param>
    public static Value? Of(CriterionResult criterion, ValueKind kind) => (criterion.Value, kind) switch
    {
        (null, _) => null,
        ({ } text, ValueKind.Number or ValueKind.Time) => new NumberValue(decimal.Parse(text, CultureInfo.InvariantCulture), criterion.Unit is null ? null : UnitTable.Required(criterion.Unit)),
        ({ } text, ValueKind.Truth) => TruthValue.Of(text == "yes"),
        ("[]", ValueKind.List) => new ListValue([]),
        ({ } text, ValueKind.List) => new ListValue([.. text[1..^1].Split(", ")]),
        ({ } text, _) => new TextValue(text),
    };

    /// <summary>The kind of value that an action finds.</summary>
    public static ValueShape ShapeOf(StepAction action) => action switch
    {
        StepAction.Read read => read.Description.Shape,
        StepAction.Sample sample => sample.Reduce == Reduction.Count ? ValueShape.Count : sample.Description.Shape,
        StepAction.Enter enter => enter.Shape,
        StepAction.Compute compute => compute.Expression.Shape,
        StepAction.SetTo set => set.Target.Returns ?? ValueShape.Text(),
        StepAction.Do act => act.Target.Returns ?? ValueShape.Text(),
        _ => ValueShape.Text(),
    };
}
