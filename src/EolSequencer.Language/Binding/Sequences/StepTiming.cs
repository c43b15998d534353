using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a step says about time: <c>within</c>, <c>lasting</c>, <c>since</c>, <c>takes</c>, <c>every</c>.</summary>
internal static class StepTiming
{
    private static readonly string[] OfCondition = ["edge", "lasting", "since", "takes", "every"];

    public static Step Read(MapReader keys, Step step, BoundAction action, Scope scope)
    {
        if (action.Action is StepAction.Wait) return step;
        step = step with { Within = Operands.Time(keys.Find("within"), "'within'", scope) ?? DefaultWithin(keys, action, scope) };
        if (action.Action is not (StepAction.Ask or StepAction.Await)) return step;
        return action.HasCondition ? OfEnding(keys, step, action, scope) : RefuseAll(keys, step, scope);
    }

    // A sample that lasts for a stated time has its limit already.
    private static Operand? DefaultWithin(MapReader keys, BoundAction action, Scope scope) =>
        keys.Has("within") || action.Action is StepAction.Sample { For: not null } ? null : scope.Defaults.Within;

    private static Step OfEnding(MapReader keys, Step step, BoundAction action, Scope scope)
    {
        if (keys.Has("since") && !keys.Has("takes"))
        {
            scope.Report.Add(SequenceCodes.SinceWithoutTakes, keys.PlaceOf("since"), "'since' says from when 'takes' counts, and there is no 'takes'");
        }

        step = step with
        {
            Lasting = Operands.Time(keys.Find("lasting"), "'lasting'", scope),
            Since = Conditions.Add(keys, "since", scope.Names, scope.Context.Batch),
            Every = Operands.Time(keys.Find("every"), "'every'", scope) ?? scope.Defaults.Every,
        };
        return StepJudging.ReadTakes(keys, step, action, scope);
    }

    private static Step RefuseAll(MapReader keys, Step step, Scope scope)
    {
        foreach (var key in OfCondition)
        {
            if (keys.Has(key)) scope.Report.Add(SequenceCodes.NeedsUntil, keys.PlaceOf(key), $"'{key}' speaks of a condition, and a person ends this step");
        }

        return step;
    }
}
