using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds <c>wait</c> and <c>compute</c>. Null: already reported.</summary>
internal static class TimedActions
{
    public static BoundAction? Wait(MapReader keys, Scope scope) => Operands.Time(keys.Find("wait"), "'wait'", scope) is { } time
        ? new BoundAction(new StepAction.Wait(time), keys.PlaceOf("wait"), null)
        : null;

    /// <summary>
    /// With a unit the expression gives a bare number. Without one it brings its own type, which what is expected of it
    /// says too where it can.
    /// </summary>
    public static BoundAction? Compute(MapReader keys, Scope scope)
    {
        if (keys.Text("compute") is not { } text) return null;
        if (keys.Has("unit")) return Shapes.Unit(keys, "unit") is { } unit ? Bare(text, unit, scope) : null;

        var expected = keys.Find("expect") is { } expect ? ExpectedShape.Of(expect, scope) ?? ValueShape.Text() : null;
        var expression = scope.Context.Batch.Add(text, 0, text.Text.Length, scope.Names, expected is null ? Wanted.Anything : Wanted.Of(expected));
        if (expected is null) scope.Context.Batch.Then(() => CheckUnit(expression, scope.Report));
        return new BoundAction(new StepAction.Compute(expression, null), text.Place, expected) { Computed = expression };
    }

    private static BoundAction Bare(YamlScalar text, Unit unit, Scope scope)
    {
        var expression = scope.Context.Batch.Add(text, 0, text.Text.Length, scope.Names, Wanted.Count);
        return new BoundAction(new StepAction.Compute(expression, unit), text.Place, ValueShape.Number(unit));
    }

    private static void CheckUnit(Expression expression, Report report)
    {
        if (expression.Shape == ValueShape.Count)
        {
            report.Add(SequenceCodes.BareNumber, expression.Place, "this gives a bare number, and nothing says in which unit");
        }
    }
}
