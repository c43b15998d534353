using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>However YAML folds, quotes or escapes a text, a fault in it is told at its line and column in the file.</summary>
public class PlaceTests
{
    [Theory]
    [InlineData("until: bus.gear > 1 && nope\n", 1, 24)]
    [InlineData("a: 1\nuntil: \"bus.software[\\\"brakes\\\"] == \\\"x\\\" && nope\"\n", 2, 46)]
    [InlineData("until: '!bus.brake_switch && note == ''x'' && nope'\n", 1, 0)]
    [InlineData("until: >\n  bus.gear > 1\n  && bus.engine_speed.rpm > 1\n  && nope\n", 4, 6)]
    [InlineData("until: |\n  bus.gear > 1\n    // a remark\n    && nope\n", 4, 8)]
    [InlineData("until: bus.gear > 1\n  && vehicle.tow\n  && nope\n", 3, 6)]
    public void A_fault_is_told_where_it_stands(string document, int line, int column)
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var map = Assert.IsType<YamlMap>(Texts.ReadWell(document));
        var node = Assert.IsType<YamlScalar>(map.Find("until")!.Value);
        batch.Add(node, 0, node.Text.Length, SmallPlant.Names, Wanted.Truth);

        Assert.False(batch.Compile());
        var fault = report.InOrder[^1];
        if (column == 0)
        {
            Assert.Equal(ExpressionCodes.NotAllowed, report.InOrder[0].Code);
            return;
        }

        Assert.Equal(ExpressionCodes.UnknownName, fault.Code);
        Assert.Equal((line, column, column + 4), (fault.Place.Line, fault.Place.Column, fault.Place.EndColumn));
    }

    [Fact]
    public void An_expression_in_brackets_has_its_own_offset()
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var node = Texts.FirstScalar("expect: 3 s .. (travle)\n");
        batch.Add(node, 8, 6, SmallPlant.Names, Wanted.Time);

        Assert.False(batch.Compile());
        Assert.Equal("test.yaml:1:17: error EXP004: 'travle' means nothing here – did you mean 'travel'?", Assert.Single(report.InOrder).ToString());
    }

    [Fact]
    public void What_only_the_compiler_sees_is_told_in_its_words_at_the_place()
    {
        const string Text = "bus.gear > 1 && round(bus.gear, bus.count, 3) > 1";
        var fault = Author.Fault(Text);
        Assert.Equal(ExpressionCodes.Compiler, fault.Code);
        Assert.Equal("round", Author.Pointed(Text, fault));
        Assert.Contains("CS1501", fault.Found);
    }

    [Fact]
    public void The_same_slip_at_two_places_is_told_twice()
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        foreach (var line in new[] { "a: bus.gear + bus.brake_switch\n", "bbb: bus.count + bus.brake_switch\n" })
        {
            var node = Texts.FirstScalar(line);
            batch.Add(node, 0, node.Text.Length, SmallPlant.Names, Wanted.Anything);
        }

        Assert.False(batch.Compile());
        Assert.Equal([4, 6], report.InOrder.Select(finding => finding.Place.Column));
    }
}
