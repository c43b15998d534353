using CsCheck;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>The roll-up releases a vehicle or holds it: an error must never hide a fail, and nothing must ever look like a pass.</summary>
public class RollUpTests
{
    private static readonly Gen<Verdict> AnyVerdict = Gen.Enum<Verdict>();

    [Fact]
    public void The_roll_up_is_the_worst_counted_verdict_in_any_order() =>
        AnyVerdict.List[0, 20].Sample(counted =>
            RollUp.Of(counted).Verdict == Verdicts.Worst(counted)
            && RollUp.Of(counted) == RollUp.Of(counted.AsEnumerable().Reverse()));

    [Fact]
    public void Each_verdict_is_counted_once() =>
        AnyVerdict.List[0, 20].Sample(counted => RollUp.Of(counted) == new RollUp(
            counted.Count(v => v == Verdict.None), counted.Count(v => v == Verdict.Pass), counted.Count(v => v == Verdict.Inconclusive),
            counted.Count(v => v == Verdict.Fail), counted.Count(v => v == Verdict.Error)));

    [Fact]
    public void Only_a_pass_releases() =>
        AnyVerdict.List[0, 20].Sample(counted =>
            RollUp.Of(counted).Releases == (counted.Contains(Verdict.Pass) && counted.All(v => v is Verdict.Pass or Verdict.None)));

    [Fact]
    public void An_error_does_not_hide_a_fail()
    {
        var rollUp = RollUp.Of([Verdict.Fail, Verdict.Error, Verdict.Pass]);
        Assert.Equal(Verdict.Error, rollUp.Verdict);
        Assert.Equal(1, rollUp.Fail);
        Assert.Equal(["NOT OK", "REPEAT"], rollUp.ScreenLines);
    }

    [Theory]
    [InlineData(0, 0, 0, 0, 0, "REPEAT")]
    [InlineData(9, 0, 0, 0, 0, "REPEAT")]
    [InlineData(9, 1, 0, 0, 0, "PASS")]
    [InlineData(0, 5, 1, 0, 0, "REPEAT")]
    [InlineData(0, 5, 0, 0, 1, "REPEAT")]
    [InlineData(0, 5, 0, 1, 0, "NOT OK")]
    [InlineData(0, 5, 1, 1, 0, "NOT OK|REPEAT")]
    [InlineData(0, 5, 0, 1, 1, "NOT OK|REPEAT")]
    public void The_screen_says_what_to_do(int none, int pass, int inconclusive, int fail, int error, string lines) =>
        Assert.Equal(lines.Split('|'), new RollUp(none, pass, inconclusive, fail, error).ScreenLines);

    [Theory]
    [InlineData(Verdict.Pass, false, 0)]
    [InlineData(Verdict.Fail, false, 1)]
    [InlineData(Verdict.Error, false, 3)]
    [InlineData(Verdict.Inconclusive, false, 4)]
    [InlineData(Verdict.None, false, 4)]
    [InlineData(Verdict.Pass, true, 4)]
    [InlineData(Verdict.Fail, true, 1)]
    [InlineData(Verdict.Error, true, 3)]
    [InlineData(Verdict.Inconclusive, true, 4)]
    [InlineData(Verdict.None, true, 4)]
    public void The_exit_code_tells_vehicle_from_equipment_and_an_interrupted_run_never_passes(Verdict worst, bool interrupted, int code) =>
        Assert.Equal(code, ExitCode.Of(RollUp.Of([Verdict.Pass, worst]) with { Pass = worst == Verdict.None ? 0 : 1 }, interrupted));
}
