using CsCheck;
using EolSequencer.Model.Judging;
using EolSequencer.Statistics.Conformity;

namespace EolSequencer.Statistics.Tests.Conformity;

/// <summary>The report tells how likely a decision is wrong; these are the worked examples of the guide it follows.</summary>
public class SpecificRiskTests
{
    /// <summary>JCGM 106:2012, viscosity example: limits 12.5 to 16.3, measured 13.6, standard uncertainty 1.8: printed 0.66.</summary>
    [Fact]
    public void The_viscosity_of_the_guide_conforms_with_two_thirds() =>
        Assert.Equal(0.662630, SpecificRisk.Of(13.6m, new Window(12.5m, 16.3m, null), 3.6m)!.Conforming, 6);

    /// <summary>JCGM 106:2012, breakdown voltage at most −5.40, measured −5.47, standard uncertainty 0.05: printed 0.92.</summary>
    [Fact]
    public void The_breakdown_voltage_of_the_guide_conforms() =>
        Assert.Equal(0.919243, SpecificRisk.Of(-5.47m, new Window(null, -5.40m, null), 0.10m)!.Conforming, 6);

    /// <summary>JCGM 106:2012, speed limit 100 with 2 % uncertainty: a fine wants 0.999, which begins near 107 (106.588).</summary>
    [Fact]
    public void A_speed_of_106_588_is_above_100_with_999_in_1000()
    {
        const decimal Measured = 106.588m;
        var risk = SpecificRisk.Of(Measured, new Window(null, 100, null), 2 * 0.02m * Measured)!;
        Assert.Equal(0.001, risk.Conforming, 1e-6);
    }

    /// <summary>Specific risk at the acceptance limit with guard band r·U, k = 2: ILAC-G8:09/2019 gives below 2.5 % for r = 1; digits from R 4.2.2.</summary>
    [Theory]
    [InlineData("0", 0.5)]
    [InlineData("0.25", 0.308538)]
    [InlineData("0.5", 0.158655)]
    [InlineData("0.75", 0.066807)]
    [InlineData("0.83", 0.048457)]
    [InlineData("1", 0.022750)]
    [InlineData("1.25", 0.006210)]
    [InlineData("1.5", 0.001350)]
    [InlineData("0.822427", 0.05)]
    [InlineData("1.026874", 0.02)]
    [InlineData("1.163174", 0.01)]
    [InlineData("1.545116", 0.001)]
    public void A_guard_band_bounds_the_risk_of_accepting(string r, double risk)
    {
        var band = decimal.Parse(r, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(risk, SpecificRisk.Of(100 - (band * 2), new Window(null, 100, null), 2)!.OfAccepting, 6);
    }

    /// <summary>Tolerance as wide as 2 U: the acceptance zone is a point and conforms with 0.954500, not 0.977; computed with scipy 1.10.1.</summary>
    [Fact]
    public void Two_ends_that_are_both_near_add_their_risks() =>
        Assert.Equal(0.954500, SpecificRisk.Of(1, new Window(0, 2, null), 1)!.Conforming, 6);

    [Fact]
    public void A_guarded_pass_never_risks_more_than_a_twentieth() => Gen.Select(Gen.Int[0, 1000], Gen.Int[1, 500], Gen.Int[0, 1000]).Sample((low, u, at) =>
    {
        var window = new Window(low, low + (2 * u) + 1000, null);
        var measured = low + u + at;
        if (GuardedDecision.Judge(measured, window, u) == Verdict.Pass) Assert.True(SpecificRisk.Of(measured, window, u)!.OfAccepting < 0.0456);
    });

    [Fact]
    public void Without_uncertainty_nothing_is_risked() => Assert.Null(SpecificRisk.Of(1, new Window(0, 2, null), 0));
}
