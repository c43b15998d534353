using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Parameters asked of all emissions units at once (SAE J1979 service 01, ISO 15765-4): who answers, who does not, and when.</summary>
public class ObdReadingTests
{
    private static readonly ChannelDescription EngineSpeed = Describe.Channel(new ChannelSource.Obd(0x0C));
    private static readonly ChannelDescription Coolant = Describe.Channel(new ChannelSource.Obd(0x05));

    private readonly BusBench _bench = new();

    [Fact]
    public void The_first_unit_that_answers_gives_the_value()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E9#04410C0C80CCCCCC");
        _bench.Bus.Give("7E8#04410C1AF8", 6);
        var reading = _bench.Read(EngineSpeed);
        Assert.Equal(("800 rpm", 4.25), (reading.Value!.ToString(), TimeSpan.FromTicks(reading.Stamp).TotalMilliseconds));
    }

    [Fact, Trait("case", "OBD-04")]
    public void The_value_is_found_behind_the_parameter_and_not_among_the_header()
    {
        _bench.Bus.When("7DF#020105", 4, "7E9#0341055A");
        Assert.Equal("50 °C", _bench.Read(Coolant).Value!.ToString());
    }

    [Fact, Trait("case", "OBD-06")]
    public void A_short_answer_is_no_value()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E8#03410C1A00000000");
        var reading = _bench.Read(EngineSpeed);
        Assert.Equal(MissingCause.ShortAnswer, reading.Missing);
        Assert.Contains("short answer (1 of 2 bytes)", reading.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Silence_of_all_is_silence()
    {
        var reading = _bench.Read(EngineSpeed);
        Assert.Equal((MissingCause.Silent, "emissions units: 010C: no answer within P2 (100 ms)"), (reading.Missing, reading.Detail));
        Assert.Equal(100.25, _bench.NowMs, 3);
    }

    [Fact]
    public void A_refusal_of_one_unit_waits_for_the_value_of_another()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E8#037F0112");
        _bench.Bus.Give("7E9#04410C0C80", 30);
        Assert.Equal("800 rpm", _bench.Read(EngineSpeed).Value!.ToString());
    }

    [Fact]
    public void A_refusal_counts_when_nobody_has_a_value()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E8#037F0112");
        var reading = _bench.Read(EngineSpeed);
        Assert.Equal((MissingCause.Refused, "emissions units: 010C: 12 subFunctionNotSupported"), (reading.Missing, reading.Detail));
        Assert.Equal(100.25, _bench.NowMs, 3);
    }

    [Fact]
    public void An_answer_to_another_parameter_is_not_taken()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E8#03410D33");
        _bench.Bus.Give("7E8#04410C0C80", 30);
        Assert.Equal("800 rpm", _bench.Read(EngineSpeed).Value!.ToString());
    }

    [Fact, Trait("case", "UDS-04")]
    public void A_late_answer_is_not_the_value_of_the_next_read()
    {
        Assert.Equal(MissingCause.Silent, _bench.Read(EngineSpeed).Missing);
        _bench.Bus.When("7DF#02010C", 4, "7E8#04410C0C80");
        _bench.Bus.Give("7E8#04410C1AF8", 12);
        Assert.Equal("1726 rpm", _bench.Read(EngineSpeed).Value!.ToString());
    }

    [Fact]
    public void Units_at_work_are_not_asked_before_they_have_answered()
    {
        _bench.Bus.When("7E0#0322F190", 30, "7E8#0462F19001").When("7DF#02010C", 4, "7E8#04410C0C80");
        var both = _bench.Time.Run(async () =>
        {
            var data = _bench.Device.ReadAsync(_bench.Request(Describe.Data("powertrain", 0xF190, Describe.Number(8)), null), default).AsTask();
            var speed = _bench.Device.ReadAsync(_bench.Request(EngineSpeed, null), default).AsTask();
            return await Task.WhenAll(data, speed);
        });
        Assert.Equal(["1", "800 rpm"], both.Select(reading => reading.Value!.ToString()));
        Assert.Equal([0.25, 30.5], _bench.Bus.Sent.Select(sent => Math.Round(sent.AtMs, 2)));
    }

    [Fact]
    public void A_link_lost_while_waiting_is_said_to_be_down()
    {
        _bench.Time.At(TimeSpan.FromMilliseconds(20), () => _bench.Bus.Change(LinkState.Down));
        Assert.Equal(MissingCause.LinkDown, _bench.Read(EngineSpeed).Missing);
    }

    [Fact]
    public void Units_with_29_bit_identifiers_are_asked_at_the_group_address_of_their_format()
    {
        var bench = new BusBench(fitted: [new ControlUnit("powertrain", 0x18DA10F1, 0x18DAF110, null, null)]);
        bench.Bus.When("18DB33F1#02010C", 4, "18DAF110#04410C0C80");
        Assert.Equal("800 rpm", bench.Read(EngineSpeed).Value!.ToString());
    }

    [Fact]
    public void Every_index_of_a_parameter_is_the_same_reading()
    {
        _bench.Bus.When("7DF#02010C", 4, "7E8#04410C0C80");
        Assert.Equal(["800 rpm", "800 rpm"], _bench.ReadEach(EngineSpeed, "a", "b").Select(reading => reading.Value!.ToString()));
    }
}
