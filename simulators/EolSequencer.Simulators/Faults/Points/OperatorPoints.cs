using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The person: does not do, does something else, is slow.</summary>
internal static class OperatorPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        One("operator_leaves", FaultKind.OperatorError, StepClass.Function, "nothing is answered or done any more",
            target => target.Operator.HasLeft = true),
        OneNumber("operator_slow", FaultKind.OperatorError, StepClass.Other, "everything takes so many times as long", 3, "",
            (target, factor) => target.Operator.Slowness = factor),
        One("scans_other_label", FaultKind.OperatorError, StepClass.Safety, "the label of another vehicle is scanned",
            target => target.Operator.ScansOtherLabel = true),
        One("mixes_up_sides", FaultKind.OperatorError, StepClass.Function, "left is taken for right",
            target => target.Operator.MixesUpSides = true),
        One("pedal_let_go", FaultKind.OperatorError, StepClass.Other, "the brake pedal is let go at once, the first time",
            target => target.Operator.LetsGoOfPedal = true),
        ForStep("ignores", FaultKind.OperatorError, StepClass.Function, "nothing is done or answered at that step",
            action => action.Prompt is not null, (target, step) => target.Operator.Ignored.Add(step)),
        ForStep("misjudges", FaultKind.OperatorError, StepClass.Function, "at that step good is called bad and bad good",
            action => action is StepAction.Judge, (target, step) => target.Operator.Misjudged.Add(step)),
    ];
}
