using EolSequencer.Language.Expressions.Support;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>An expression runs on the one thread of a station: what it may cost is bounded, whatever is written in it.</summary>
public class WorkTests
{
    [Fact]
    public void A_text_that_doubles_from_step_to_step_ends_at_the_longest_text()
    {
        var doubled = Author.Writes("$\"{note}{note}\"");
        var text = "x";
        Exception? fault = null;
        for (var step = 0; step < 40 && fault is null; step++)
        {
            fault = Record.Exception(() => text = doubled.Evaluate(new FixedScope().With("note", text)).ToString()!);
        }

        Assert.Equal(ScopeValues.MostLetters, text.Length);
        Assert.Equal("a text of 8192 letters is more than the 4096 an expression takes", Assert.IsType<ExpressionFault>(fault).Message);
    }

    [Fact]
    public void A_text_longer_than_an_expression_takes_is_a_fault_and_no_work()
    {
        var fault = Assert.Throws<ExpressionFault>(() => Author.Value("note.Length", new FixedScope().With("note", new string('x', 5000))));
        Assert.Equal("a text of 5000 letters is more than the 4096 an expression takes", fault.Message);
    }

    /// <summary>As many searches as an expression has room for, each the worst there is: nearly a match at every letter.</summary>
    [Fact, Trait("kind", "slow")]
    public void The_slowest_expression_ends_in_a_moment()
    {
        var slow = Author.Writes("!" + string.Join(" && !", Enumerable.Repeat("note.Contains(order.paint)", 60)));
        var scope = new FixedScope().With("note", new string('a', 4096)).With("order.paint", new string('a', 2047) + "b");
        var begun = TimeProvider.System.GetTimestamp();

        Assert.True(slow.IsTrue(scope));
        Assert.InRange(TimeProvider.System.GetElapsedTime(begun), TimeSpan.Zero, TimeSpan.FromSeconds(2));
    }

    [Fact]
    public void Work_beyond_the_budget_is_a_fault_at_the_same_place_every_time()
    {
        static long Endure()
        {
            var (scope, spent) = (new FixedScope(), 0L);
            while (Record.Exception(() => scope.Spend(1000)) is not ExpressionFault) spent += 1000;
            return spent;
        }

        Assert.Equal(ExpressionScope.MostWork, Endure());
        Assert.Equal(Endure(), Endure());
    }

    [Fact]
    public void Each_evaluation_has_a_budget_of_its_own()
    {
        var scope = new FixedScope();
        var two = Author.Writes("1 + 1");
        for (var time = 0; time < 3; time++)
        {
            scope.Spend(ExpressionScope.MostWork);
            Assert.Equal("2", two.Evaluate(scope).ToString());
        }
    }
}
