using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Replay;

/// <summary>Where a part was when a run found it is a fact of that day: a replay takes it as recorded, or says that nobody asked.</summary>
public sealed class SerialReplayTests
{
    private static readonly Revision Keeping = SmallPlant.With("equals (order.coding) }", "\"matches /0+/\", record: serial, part: body_unit }");

    /// <summary>What the unit says before it is coded.</summary>
    private const string Serial = "00000000";

    private static readonly RehearsedSerials Elsewhere = new(("body_unit", Serial, "TESTVXN06AA000017", "startup_1-000009"));

    [Fact]
    public void In_a_rehearsal_the_parts_of_other_vehicles_are_made_up()
    {
        Assert.Equal(["body_unit"], SmallPlant.Rehearse(Keeping, 0, 1).OfType<Judged>().Select(judged => judged.Part).OfType<string>());

        var failed = SmallPlant.Rehearse(Keeping, Elsewhere).OfType<Judged>().Single(judged => judged.Step.EndsWith("coding", StringComparison.Ordinal));

        Assert.Equal((Model.Judging.Verdict.Fail, $"serial '{Serial}' of part body_unit is on vehicle TESTVXN06AA000017, found in run startup_1-000009"), (failed.Counted, failed.Detail));
    }

    [Fact]
    public void What_was_found_out_then_is_taken_as_it_was()
    {
        Assert.Equal("fail", Coding(RunReplay.Of(Keeping, Keeping, SmallPlant.Rehearse(Keeping, Elsewhere))).Is.Word);
        Assert.Equal("pass", Coding(RunReplay.Of(Keeping, Keeping, SmallPlant.Rehearse(Keeping, 0, 1))).Is.Word);
        Assert.Equal("pass", Coding(RunReplay.Of(Keeping, SmallPlant.With("equals (order.coding) }", "\"matches /0+/\" }"), SmallPlant.Rehearse(Keeping, Elsewhere))).Is.Word);
    }

    [Theory]
    [InlineData("record: serial, part: body_unit")]
    [InlineData("record: serial")]
    public void What_nobody_asked_then_is_undecidable(string young)
    {
        var (old, now) = young.Contains("part", StringComparison.Ordinal) ? (SmallPlant.First, Keeping) : (Keeping, SmallPlant.With("equals (order.coding) }", $"\"matches /0+/\", {young} }}"));

        var replayed = Coding(RunReplay.Of(old, now, SmallPlant.Rehearse(old, 0, 1)));

        Assert.Equal("whether its serial was on another vehicle then was not asked", replayed.Why);
    }

    private static ReplayedStep Coding(ReplayedRun run) => run.Steps.Single(step => step.Step.EndsWith("coding", StringComparison.Ordinal));
}
