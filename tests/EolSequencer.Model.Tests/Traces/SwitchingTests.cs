using EolSequencer.Model.Expressions;
using EolSequencer.Model.Traces;

namespace EolSequencer.Model.Tests.Traces;

/// <summary>A switch keeps what its last reading said: no line runs between yes and no.</summary>
public class SwitchingTests
{
    private static readonly Switching Lamp = Curves.Pattern(100, 300, 200, 300);

    [Fact]
    public void What_a_reading_says_holds_until_the_next()
    {
        Assert.False(Lamp.At(99_999));
        Assert.True(Lamp.At(100_000));
        Assert.True(Lamp.At(399_999));
        Assert.Throws<ExpressionFault>(() => Lamp.At(900_001));
    }

    [Fact]
    public void Changes_are_counted_and_have_their_moments()
    {
        Assert.Equal((4, 100_000L, 400_000L), (Lamp.Edges(), Lamp.Rises(), Lamp.Falls()));
        Assert.Equal(120m, Lamp.Rate());
        Assert.Equal(600_000, Lamp.TimeOn());
    }

    [Fact]
    public void A_part_begins_with_what_held_at_its_start()
    {
        var part = Lamp.Between(200_000, 700_000);
        Assert.Equal(300_000, part.TimeOn());
        Assert.Equal(600_000, part.Rises());
        Assert.Equal("bus.lamp rises only once in this part of the trace; a rate wants two rises", Assert.Throws<ExpressionFault>(() => part.Rate()).Message);
    }

    [Fact]
    public void A_switch_that_never_changes_gives_no_moment()
    {
        var dark = Lamp.Between(0, 50_000);
        Assert.Equal(0, dark.Edges());
        Assert.Equal("bus.lamp never becomes yes in this part of the trace", Assert.Throws<ExpressionFault>(() => dark.Rises()).Message);
    }
}
