using CsCheck;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>A guarded decision may hesitate but must never contradict the simple one.</summary>
/// <remarks>Decision rules: ISO 14253-1.</remarks>
public class GuardedDecisionTests
{
    private static readonly Window Lamp = new(1.60m, 2.40m, null);

    [Theory]
    [InlineData("1.54", Verdict.Fail)]
    [InlineData("1.55", Verdict.Inconclusive)]
    [InlineData("1.60", Verdict.Inconclusive)]
    [InlineData("1.6499", Verdict.Inconclusive)]
    [InlineData("1.65", Verdict.Pass)]
    [InlineData("2.35", Verdict.Pass)]
    [InlineData("2.3501", Verdict.Inconclusive)]
    [InlineData("2.45", Verdict.Inconclusive)]
    [InlineData("2.4501", Verdict.Fail)]
    public void The_guard_bands_lie_on_both_sides_of_both_ends(string number, Verdict verdict) =>
        Assert.Equal(verdict, GuardedDecision.Judge(decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture), Lamp, 0.05m));

    [Fact]
    public void An_open_end_asks_for_nothing()
    {
        Assert.Equal(Verdict.Pass, GuardedDecision.Judge(1e9m, new Window(1.6m, null, null), 0.05m));
        Assert.Equal(Verdict.Pass, GuardedDecision.Judge(-1e9m, new Window(null, 2.4m, null), 0.05m));
    }

    [Theory]
    [InlineData("0.39", true)]
    [InlineData("0.40", true)]
    [InlineData("0.41", false)]
    public void An_uncertainty_wider_than_the_window_lets_nothing_pass(string uncertainty, bool canPass) =>
        Assert.Equal(canPass, GuardedDecision.CanPass(Lamp, decimal.Parse(uncertainty, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void A_half_open_window_can_always_pass() => Assert.True(GuardedDecision.CanPass(new Window(1, null, null), 1000));

    [Fact]
    public void A_negative_uncertainty_is_a_broken_assumption() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GuardedDecision.Judge(2, Lamp, -0.05m));

    [Fact]
    public void Without_uncertainty_it_is_the_simple_decision() =>
        Cases.Sample((window, number, _) => GuardedDecision.Judge(number, window, 0) == window.Judge(number));

    [Fact]
    public void A_guarded_pass_or_fail_is_a_simple_one_too() =>
        Cases.Sample((window, number, uncertainty) => GuardedDecision.Judge(number, window, uncertainty) switch
        {
            Verdict.Inconclusive => true,
            var decided => decided == window.Judge(number),
        });

    [Fact]
    public void More_uncertainty_never_decides_what_less_left_open() =>
        Cases.Sample((window, number, uncertainty) =>
            GuardedDecision.Judge(number, window, uncertainty) != Verdict.Inconclusive
            || GuardedDecision.Judge(number, window, uncertainty + 0.01m) == Verdict.Inconclusive);

    [Fact]
    public void Something_passes_exactly_when_the_guard_bands_do_not_meet() =>
        Cases.Sample((window, _, uncertainty) =>
            GuardedDecision.CanPass(window, uncertainty)
            == (GuardedDecision.Judge((window.Low!.Value + window.High!.Value) / 2, window, uncertainty) == Verdict.Pass));

    private static Gen<(Window, decimal, decimal)> Cases =>
        Gen.Select(Gen.Int[-500, 500], Gen.Int[0, 300], Gen.Int[-900, 900], Gen.Int[0, 200], (low, width, number, uncertainty) =>
            (new Window(low / 100m, (low + width) / 100m, null), number / 100m, uncertainty / 100m));
}
