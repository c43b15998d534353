using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>A part is on one vehicle: its serial found on another one speaks against the vehicle, and is never an error of the station.</summary>
public class SerialTests
{
    private const string Other = "TESTVXN09AA000018";

    private readonly Bench _bench = new();

    [Fact]
    public void A_serial_that_is_nowhere_else_passes_and_is_kept_for_its_part()
    {
        Assert.Equal(Verdict.Pass, Scan("LK-0001", Step("lock", "lock_unit")));

        var judged = _bench.Judged.Single();
        Assert.Equal("lock_unit", judged.Part);
        Assert.Equal([("", Verdict.None), ("serial", Verdict.Pass)], judged.Criteria.Select(one => (one.Of, one.Verdict)));
    }

    [Fact]
    public void A_serial_on_another_vehicle_fails_and_names_it()
    {
        _bench.Serials = new Known(new SerialAnswer.There(Other, new PartName("lock_unit", ""), "startup_1-000007"));

        Assert.Equal(Verdict.Fail, Scan("LK-0001", Step("lock", "lock_unit")));

        var judged = _bench.Judged.Single();
        Assert.Equal($"serial 'LK-0001' of part lock_unit is on vehicle {Other}, found in run startup_1-000007", judged.Detail);
        Assert.Null(judged.Part);
    }

    [Fact]
    public void A_serial_that_is_on_the_same_vehicle_in_another_place_fails()
    {
        _bench.Serials = new Known(new SerialAnswer.There(Bench.DemoOrder.Vin.Text, new PartName("lock_unit", "rear"), "startup_1-000007"));

        Assert.Equal(Verdict.Fail, Scan("LK-0001", Step("lock", "lock_unit")));
        Assert.Equal("serial 'LK-0001' is on this vehicle already, as part lock_unit[rear], found in run startup_1-000007", _bench.Judged.Single().Detail);
    }

    [Fact]
    public void What_cannot_be_found_out_is_an_error_and_keeps_nothing()
    {
        _bench.Serials = new Known(new SerialAnswer.Unknown("the disk is gone"));

        Assert.Equal(Verdict.Error, Scan("LK-0001", Step("lock", "lock_unit")));
        Assert.Null(_bench.Judged.Single().Part);
    }

    [Theory]
    [InlineData("  ", "the serial is empty")]
    [InlineData("A\u0007B", "the serial holds a character that cannot be seen")]
    [InlineData("' OR 1=1 --", null)]
    public void A_serial_is_a_short_text_that_can_be_seen(string scanned, string? fault)
    {
        Assert.Equal(fault is null ? Verdict.Pass : Verdict.Fail, Scan(scanned, Step("lock", null)));
        Assert.Equal(fault, _bench.Judged.Single().Detail);
    }

    [Fact]
    public void An_oversized_serial_fails() => Assert.Equal(Verdict.Fail, Scan(new string('A', 81), Step("lock", null)));

    [Fact]
    public void A_serial_that_is_not_what_is_expected_is_not_kept()
    {
        var step = Step("lock", "lock_unit") with { Expect = new Expectation.Empty() };

        Assert.Equal(Verdict.Fail, Scan("LK-0001", step));
        Assert.Null(_bench.Judged.Single().Part);
    }

    [Fact]
    public void Record_only_counts_as_none_and_the_finding_stays()
    {
        _bench.Serials = new Known(new SerialAnswer.There(Other, new PartName("lock_unit", ""), "startup_1-000007"));

        Assert.Equal(Verdict.None, Scan("LK-0001", Step("lock", "lock_unit") with { RecordOnly = true }));
        Assert.Equal((Verdict.Fail, Verdict.None), (_bench.Judged.Single().Measured, _bench.Judged.Single().Counted));
    }

    [Fact]
    public void Nobody_is_asked_about_a_serial_that_was_not_found()
    {
        _bench.Serials = new Known(new SerialAnswer.Unknown("must not be asked"));

        Assert.Equal(Verdict.Inconclusive, _bench.Run(Step("lock", "lock_unit")));
    }

    [Theory]
    [InlineData("doors[front].lock", null, "doors.lock[front]")]
    [InlineData("doors[front].lock", "lock_unit", "lock_unit[front]")]
    [InlineData("axle[a].wheel[l].sensor", "sensor", "sensor[a,l]")]
    [InlineData("lock", null, "lock")]
    public void A_part_is_called_as_its_step_or_by_its_name_with_loop_values(string step, string? name, string part)
    {
        Assert.Equal(part, PartName.OfStep(step, name).ToString());
        Assert.Equal(PartName.OfStep(step, name), PartName.Read(part));
    }

    private Verdict Scan(string text, Step step)
    {
        _bench.Operator.Answers(step.Id, new Answer.Text(text));
        return _bench.Run(step);
    }

    private static Step Step(string id, string? part) => Steps.Of(id, new StepAction.Scan(LocalText.Plain("Scan the label.")), 20) with { Serial = new SerialRule(part) };

    private sealed class Known(SerialAnswer answer) : IPartSerials
    {
        public SerialAnswer Elsewhere(Vin vin, PartName part, string serial) => answer;
    }
}
