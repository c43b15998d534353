using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Expressions;

/// <summary>A result is looked up by the full id of a step instance; a wrong id would judge another wheel.</summary>
public class ResultUseTests
{
    private static readonly Arguments Left = Arguments.None.With("side", new TextValue("left"));

    [Fact]
    public void From_the_top_a_path_says_every_loop_value()
    {
        var use = new ResultUse(0, [new("wheels", [new IndexUse.Fixed("fl"), new IndexUse.Named("side")]), new("torque", [])], false);

        Assert.Equal("wheels[fl,left].torque", use.Resolve(Left, "other.step"));
    }

    [Fact]
    public void A_sibling_is_found_in_the_instance_that_asks()
    {
        var use = new ResultUse(2, [new("down", [])], false);

        Assert.Equal("doors[front.left].window.down", use.Resolve(Arguments.None, "doors[front.left].window.up"));
    }

    [Fact]
    public void A_path_cannot_begin_deeper_than_the_asker_lies()
    {
        var use = new ResultUse(2, [new("down", [])], false);

        Assert.Throws<InvalidOperationException>(() => use.Resolve(Arguments.None, "doors.up"));
    }
}
