using EolSequencer.Language.Binding.Reach;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>What a plan counts for one step.</summary>
/// <remarks>
/// What the step says of itself (<c>planned</c>) counts first; then <c>wait</c> and <c>for</c>, the middle of the window
/// <c>takes</c> (its upper end when it has no lower one), and else what the plant plans for the action. <c>lasting</c> and a
/// caution come on top. Further attempts, the walk to another place and what nobody can plan, such as a device that thinks,
/// do not count; a step whose <c>only-if</c> is open counts in full.
/// </remarks>
internal static class StepTime
{
    public static TimeSpan Of(NodeInstance instance, PlannedTimes times)
    {
        var step = (Step)instance.Node;
        var caution = step.Caution is null ? TimeSpan.Zero : times.Caution;
        return caution + (step.Planned ?? Action(step, instance.Arguments, times));
    }

    private static TimeSpan Action(Step step, Arguments arguments, PlannedTimes times) => step.Action switch
    {
        StepAction.Wait wait => Duration(wait.Duration, arguments),
        StepAction.Sample { For: { } lasts } => Duration(lasts, arguments),
        StepAction.Sample => times.Await,
        StepAction.Ask { Until: null } => times.Confirm,
        StepAction.Ask => (Takes(step, arguments) ?? times.Ask) + Lasting(step, arguments),
        StepAction.Await => (Takes(step, arguments) ?? times.Await) + Lasting(step, arguments),
        StepAction.Judge => times.Judge,
        StepAction.Enter => times.Enter,
        StepAction.Scan => times.Scan,
        StepAction.Choose => times.Choose,
        StepAction.Compute => TimeSpan.Zero,
        _ => times.Exchange,
    };

    private static TimeSpan Lasting(Step step, Arguments arguments) => step.Lasting is { } lasting ? Duration(lasting, arguments) : TimeSpan.Zero;

    private static TimeSpan? Takes(Step step, Arguments arguments)
    {
        if (step.Takes is not Expectation.Within { High: { } high, Unit: { } unit } window) return null;
        var upper = Duration(high, arguments, unit);
        return window.Low is { } low ? (Duration(low, arguments, unit) + upper) / 2 : upper;
    }

    // A time that only a result or a reading decides is not known here.
    private static TimeSpan Duration(Operand operand, Arguments arguments, Unit? unit = null)
    {
        if (PossibleVehicles.Known(operand, arguments) is not NumberValue number) return TimeSpan.Zero;
        if (number.Unit is null && unit is not null) number = number with { Unit = unit };
        return number.TryIn(UnitTable.Second, out var seconds) && seconds is >= 0 and <= 1_000_000
            ? new TimeSpan((long)(seconds * TimeSpan.TicksPerSecond))
            : TimeSpan.Zero;
    }
}
