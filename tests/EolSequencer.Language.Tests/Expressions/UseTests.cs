using System.Globalization;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>The engine samples what an expression declares, no more and no less, and texts are the same in every culture.</summary>
public class UseTests
{
    [Fact]
    public void Each_channel_is_declared_once_in_the_order_of_the_text()
    {
        var expression = Author.Writes("bus.gear > 1 && (bus.door_ajar[door] || bus.door_ajar[\"rear\"]) && bus.gear < 5");
        Assert.Equal(["bus.gear", "bus.door_ajar[door]", "bus.door_ajar[rear]"], expression.Channels.Select(use => use.ToString()));
        Assert.IsType<IndexUse.Named>(expression.Channels[1].Index);
        Assert.IsType<IndexUse.Fixed>(expression.Channels[2].Index);
        Assert.False(expression.IsKnownBeforeRun);
    }

    [Fact]
    public void What_names_no_reading_and_no_result_is_known_before_the_run() =>
        Assert.True(Author.Writes("vehicle.drive == \"fwd\" && door != \"rear\" && order.software[ecu] != \"\"").IsKnownBeforeRun);

    [Fact]
    public void A_text_that_is_only_read_keeps_its_words()
    {
        Assert.Equal(ValueShape.OneOf("fwd", "awd"), Author.Writes("(vehicle.drive)").Shape);
        Assert.Equal(ValueShape.Text(17), Author.Writes("vehicle.vin").Shape);
        Assert.Equal(ValueShape.Text(), Author.Writes("vehicle.tow ? vehicle.drive : note").Shape);
        Assert.Equal(ValueShape.Time.Unit, Author.Writes("travel").Shape.Unit);
    }

    [Theory]
    [Trait("case", "EXP-05")]
    [InlineData("de-DE")]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    [InlineData("fr-FR")]
    public void A_text_is_put_together_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo(culture);
        try
        {
            var scope = new FixedScope().With("bus.gear", -1.5m).With("bus.pressure", 2.40m, "bar").With("note", "I").With("vehicle.tow", true);
            Assert.Equal("VOLT -1.5", Author.Value("$\"VOLT {bus.gear}\"", scope).ToString());
            Assert.Equal("I 2.40 bar -001.50 yes 3", Author.Value("$\"{note} {bus.pressure} {bus.gear:000.00} {vehicle.tow} {3}\"", scope).ToString());
            Assert.Equal("ab", Author.Value("\"a\" + \"b\"", scope).ToString());
            Assert.Equal("no", Author.Value("starts(note, \"i\")", scope).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Later_checks_see_the_shapes_and_run_only_when_all_is_well()
    {
        var seen = new List<ValueShape>();
        foreach (var text in new[] { "bus.gear", "bus.geer" })
        {
            var batch = new ExpressionBatch(new(), ExpressionCache.None);
            var node = Texts.FirstScalar($"compute: {text}");
            var expression = batch.Add(node, 0, node.Text.Length, SmallPlant.Names, Wanted.Anything);
            batch.Then(() => seen.Add(expression.Shape));
            batch.Compile();
        }

        Assert.Equal([ValueShape.Count], seen);
    }

    [Fact]
    public void A_fault_in_the_log_leads_to_the_authors_line()
    {
        var load = Load.Of(ExpressionCache.None, "bus.brake_switch", "bus.gear / bus.count");
        var scope = new FixedScope().With("bus.gear", 1m).With("bus.count", 0m);
        var fault = Assert.Throws<ExpressionFault>(() => scope.Evaluate(load.Expressions[1]));
        Assert.Contains("test.yaml:line 2", fault.InnerException!.StackTrace);
    }
}
