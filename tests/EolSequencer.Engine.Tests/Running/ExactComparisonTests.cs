using System.Text.RegularExpressions;
using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>What cannot be decided is an error with its cause in words: it neither passes, nor fails the vehicle, nor ends the program.</summary>
public class ExactComparisonTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void A_regular_expression_that_runs_away_is_an_error_of_that_step_alone()
    {
        const string pattern = "(A+)+B";
        var runaway = new Expectation.Matches(pattern, new Regex($@"\A(?:{pattern})\z", RegexOptions.CultureInvariant, TimeSpan.FromMilliseconds(100)));
        var text = new string('A', 64) + '!';
        _bench.Bus.With("vin", _ => new TextValue(text)).With("voltage", _ => Volt(12.5m));
        Assert.Equal(Verdict.Error, _bench.Run(
            Steps.Read("vin", new("bus", "vin", null), runaway),
            Steps.Read("battery", Voltage, Steps.Volts(12m, 13m))));
        Assert.Equal([Verdict.Error, Verdict.Pass], _bench.Judged.Select(judged => judged.Counted));
        Assert.StartsWith($"whether '{text}' matches /(A+)+B/ was not found out within 100 ms", _bench.Judged.First().Detail, StringComparison.Ordinal);
        Assert.Null(_bench.Result!.Fault);
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void A_number_that_came_through_floating_point_is_never_compared_exactly(bool isReadInexact, bool isWantedInexact)
    {
        _bench.Bus.With("voltage", _ => Volt(12.5m) with { Inexact = isReadInexact });
        var wanted = new Operand.Constant(Volt(12.5m) with { Inexact = isWantedInexact });
        Assert.Equal(Verdict.Error, _bench.Run(Steps.Read("equal", Voltage, new Expectation.EqualTo(wanted)), Steps.Read("one", Voltage, new Expectation.OneOf([wanted]))));
        Assert.All(_bench.Judged, judged => Assert.Contains("floating point", judged.Detail, StringComparison.Ordinal));
    }

    [Fact]
    public void Exact_numbers_are_compared_after_conversion()
    {
        _bench.Bus.With("voltage", _ => new NumberValue(12500, Model.Units.UnitTable.Required("mV")));
        Assert.Equal(Verdict.Pass, _bench.Run(Steps.Read("battery", Voltage, new Expectation.EqualTo(new Operand.Constant(Volt(12.50m))))));
    }
}
