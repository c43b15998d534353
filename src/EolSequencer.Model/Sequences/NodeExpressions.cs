using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Sequences;

/// <summary>The expressions of a node that are evaluated while it runs; not its <c>when</c>, not those of its children.</summary>
public static class NodeExpressions
{
    public static IEnumerable<Expression> Of(Node node)
    {
        IEnumerable<Expression?> own = node is Step step ? Of(step) : [];
        return own.Append(node.OnlyIf).Append(node.Require?.That).OfType<Expression>();
    }

    private static IEnumerable<Expression?> Of(Step step) =>
    [
        .. Of(step.Action),
        .. Of(step.Expect),
        .. Of(step.Takes),
        step.Since,
        .. new[] { step.Within, step.Lasting, step.Uncertainty, step.Every }.Select(Of),
    ];

    private static IEnumerable<Expression?> Of(StepAction action) => action switch
    {
        StepAction.Ask ask => [ask.Until],
        StepAction.Sample sample => [sample.Until, Of(sample.For), Of(sample.Every)],
        StepAction.Await await => [await.Condition],
        StepAction.Wait wait => [Of(wait.Duration)],
        StepAction.SetTo set => [Of(set.To)],
        StepAction.Do act => act.With.Select(argument => Of(argument.Value)),
        StepAction.Compute compute => [compute.Expression],
        _ => [],
    };

    private static IEnumerable<Expression?> Of(Expectation? expect) => expect switch
    {
        Expectation.Within window => [Of(window.Low), Of(window.High)],
        Expectation.EqualTo equal => [Of(equal.Wanted)],
        Expectation.OneOf one => one.Wanted.Select(Of),
        Expectation.ByVehicle rows => rows.Rows.SelectMany(row => Of(row.Is)),
        Expectation.ByIndex windows => windows.Windows.Values.SelectMany(Of),
        _ => [],
    };

    private static Expression? Of(Operand? operand) => (operand as Operand.Computed)?.Expression;
}
