using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Planning;

/// <summary>A fragment used in a loop gets the loop's values; otherwise both windows would be tested on the left.</summary>
public sealed class FragmentArgumentsTests
{
    [Fact]
    public void A_loop_gives_its_value_to_the_parameter_of_the_fragment_it_uses()
    {
        var group = Steps.Group("window", Steps.Wait("w", 1)) with
        {
            Fragment = "window",
            Each = [new LoopName("where", [new LoopValue("left", null), new LoopValue("right", null)])],
            Arguments = [new StepAction.Argument("side", new Operand.Computed(Argument("where")))],
        };

        var plan = Planner.For(Bench.Sequence(group), Bench.DemoOrder);

        Assert.Equal(["window[left]", "window[right]"], plan.Steps.Select(node => node.Id));
        Assert.Equal(["left", "right"], plan.Steps.Select(node => node.Arguments.Text("side")));
        Assert.All(plan.Steps, node => Assert.Null(node.Arguments.Find("where")));
    }

    private static Expression Argument(string name)
    {
        var expression = new Expression(name, SourcePlace.None);
        expression.Complete(new Expression.Compiled(ValueShape.Text(), [], [], scope => scope.Argument(name)));
        return expression;
    }
}
