using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Planning;

/// <summary>What a plan counts for one step.</summary>
/// <remarks>
/// What the step says of itself (<c>planned</c>) counts first; then <c>wait</c> and <c>for</c>, the middle of the window
/// <c>takes</c> (its upper end when it has no lower one), and else what the plant plans for the action. <c>lasting</c> and a
/// caution come on top. Further attempts, the walk to another place and what nobody can plan, such as a device that thinks,
/// do not count; a step whose <c>only-if</c> is open counts in full.
/// </remarks>
public static class StepTime
{
    /// <summary>The time of one step with one set of loop values.</summary>
    /// <param name="known">The value of an operand as far as it is known before the run; null when only the run decides it, and that time counts as nothing.</param>
    public static TimeSpan Of(Step step, PlannedTimes times, Func<Operand, Value?> known)
    {
        var caution = step.Caution is null ? TimeSpan.Zero : times.Caution;
        return caution + (step.Planned ?? Action(step, times, known));
    }

    private static TimeSpan Action(Step step, PlannedTimes times, Func<Operand, Value?> known) => step.Action switch
    {
        StepAction.Wait wait => Duration(wait.Duration, known),
        StepAction.Sample { For: { } lasts } => Duration(lasts, known),
        StepAction.Sample => times.Await,
        StepAction.Ask { Until: null } => times.Confirm,
        StepAction.Ask => (Takes(step, known) ?? times.Ask) + Lasting(step, known),
        StepAction.Await => (Takes(step, known) ?? times.Await) + Lasting(step, known),
        StepAction.Judge => times.Judge,
        StepAction.Enter => times.Enter,
        StepAction.Scan => times.Scan,
        StepAction.Choose => times.Choose,
        StepAction.Compute => TimeSpan.Zero,
        _ => times.Exchange,
    };

    private static TimeSpan Lasting(Step step, Func<Operand, Value?> known) => step.Lasting is { } lasting ? Duration(lasting, known) : TimeSpan.Zero;

    private static TimeSpan? Takes(Step step, Func<Operand, Value?> known)
    {
        if (step.Takes is not Expectation.Within { High: { } high, Unit: { } unit } window) return null;
        var upper = Duration(high, known, unit);
        return window.Low is { } low ? (Duration(low, known, unit) + upper) / 2 : upper;
    }

    // A time that only a result or a reading decides is not known here.
    private static TimeSpan Duration(Operand operand, Func<Operand, Value?> known, Unit? unit = null)
    {
        if (known(operand) is not NumberValue number) return TimeSpan.Zero;
        if (number.Unit is null && unit is not null) number = number with { Unit = unit };
        return number.TryIn(UnitTable.Second, out var seconds) && seconds is >= 0 and <= 1_000_000
            ? new TimeSpan((long)(seconds * TimeSpan.TicksPerSecond))
            : TimeSpan.Zero;
    }
}
