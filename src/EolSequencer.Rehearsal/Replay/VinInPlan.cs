using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>Whether what a sequence plans depends on the vehicle's own number, and not only on options and facts that many vehicles share.</summary>
internal static class VinInPlan
{
    public static bool Matters(CheckedSequence sequence) =>
        Matters(sequence.Prepare) || Matters(sequence.Steps) || Matters(sequence.Always) || Matters(sequence.AfterVerdict)
        || sequence.VehicleType.ControlUnits.Any(unit => Asks(unit.When));

    private static bool Matters(IEnumerable<Node> nodes) => nodes.Any(node => Asks(node.When) || node switch
    {
        Step step => Asks(step.Expect) || step.Action is StepAction.Read read && read.Description.Indexes.Any(index => Asks(index.When)),
        Group group => group.Each.Any(loop => loop.Values.Any(value => Asks(value.When))) || group.Arguments.Any(argument => Asks(argument.Value))
            || (group.Capture?.Channels.Any(kept => Asks(kept.Description.When) || kept.Description.Indexes.Any(index => Asks(index.When))) ?? false)
            || Matters(group.Children) || Matters(group.Always),
        Together together => together.Branches.Any(branch => Matters(branch.Children)),
        _ => true,
    });

    private static bool Asks(Expectation? expect) => expect switch
    {
        Expectation.ByVehicle rows => rows.Rows.Any(row => Asks(row.When) || Asks(row.Is)),
        Expectation.ByIndex windows => windows.Windows.Values.Any(Asks),
        _ => false,
    };

    private static bool Asks(Operand operand) => operand is Operand.Computed computed && Asks(computed.Expression);

    private static bool Asks(Expression? expression) => expression is not null && expression.Text.Contains("vin", StringComparison.Ordinal);
}
