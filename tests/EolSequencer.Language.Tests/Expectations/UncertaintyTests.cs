using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Model.Sequences;
using static EolSequencer.Language.Tests.Expectations.Judging;

namespace EolSequencer.Language.Tests.Expectations;

/// <summary>An uncertainty that swallows its window would make every vehicle inconclusive; the author hears of it while loading.</summary>
public class UncertaintyTests
{
    [Theory]
    [InlineData("0.05 A", "A", "0.05 A")]
    [InlineData("50 mA", "A", "0.050 A")]
    [InlineData("0.5 °C", "°C", "0.5 °C")]
    [InlineData("0.5 K", "°C", "0.5 °C")]
    [InlineData("0.5 K diff", "°F", "0.90 °F")]
    [InlineData("0 A", "A", "0 A")]
    public void It_is_a_width_in_the_unit_that_is_judged(string text, string unit, string width) =>
        Assert.Equal(width, Well(text, Number(unit)).Value.ToString());

    [Theory]
    [InlineData("0.05", "UNT002")]
    [InlineData("0.05 V", "UNT004")]
    [InlineData("-0.05 A", "WIN006")]
    [InlineData("(x)", "NUM003")]
    [InlineData("0,05 A", "NUM001")]
    public void Anything_else_is_refused(string text, string code)
    {
        var report = new Report();
        Assert.Null(UncertaintyBinder.Bind(Texts.FirstScalar($"uncertainty: {text}\n"), Number("A"), report));
        Assert.Equal(code, Assert.Single(report.InOrder).Code.Id);
    }

    [Theory]
    [InlineData("1.60 .. 2.40 A", "0.40 A", null)]
    [InlineData("1.60 .. 2.40 A", "0.41 A", "twice the uncertainty of 0.41 A is wider than the window 1.60 .. 2.40 A")]
    [InlineData("1600 .. 2400 mA", "0.41 A", "twice the uncertainty of 0.41 A is wider than the window 1600 .. 2400 mA")]
    [InlineData("at least 1.60 A", "100 A", null)]
    [InlineData("1.60 A .. (x)", "100 A", null)]
    public void A_window_narrower_than_twice_the_uncertainty_is_reported(string expect, string uncertainty, string? found) =>
        Assert.Equal(found, GuardFault(Judging.Well(expect, Number("A")), uncertainty));

    [Fact]
    public void Every_row_and_every_index_of_a_limit_is_looked_at()
    {
        var (wide, narrow) = (Judging.Well("1 .. 9 A", Number("A")), Judging.Well("1 .. 2 A", Number("A")));
        Assert.Null(GuardFault(new Expectation.ByVehicle("x", [new(null, wide)]), "1 A"));
        Assert.NotNull(GuardFault(new Expectation.ByVehicle("x", [new(null, wide), new(null, narrow)]), "1 A"));
        Assert.NotNull(GuardFault(
            new Expectation.ByIndex("x", System.Collections.Immutable.ImmutableDictionary<string, Expectation>.Empty.Add("fl", wide).Add("fr", narrow)), "1 A"));
    }

    private static Operand.Constant Well(string text, JudgedValue judged)
    {
        var report = new Report();
        var bound = UncertaintyBinder.Bind(Texts.FirstScalar($"uncertainty: {text}\n"), judged, report);
        Assert.Empty(report.InOrder);
        return Assert.IsType<Operand.Constant>(bound);
    }

    private static string? GuardFault(Expectation expect, string uncertainty)
    {
        var report = new Report();
        UncertaintyBinder.CheckGuard(Texts.FirstScalar($"uncertainty: {uncertainty}\n"), Well(uncertainty, Number("A")), expect, report);
        return report.InOrder.SingleOrDefault()?.Found;
    }
}
