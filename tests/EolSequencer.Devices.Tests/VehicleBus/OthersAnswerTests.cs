using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>A control unit that is dead on a healthy bus is the vehicle's fault, a dead bus is the station's: this tells them apart.</summary>
public class OthersAnswerTests
{
    private static readonly ChannelDescription OfGateway = Describe.Data("gateway", 0x2104, Describe.Number(8));

    private readonly BusBench _bench = new();

    [Fact]
    public void A_dead_unit_on_a_healthy_bus_is_told_by_another_that_answers()
    {
        var reading = _bench.Read(OfGateway);
        _bench.Bus.When("713#023E00", 2, "71B#027E00");
        Assert.True(_bench.OthersAnswer(OfGateway, reading.Stamp));
        Assert.Equal(["713#023E00CCCCCCCCCC"], _bench.Bus.Sent.Skip(1).Select(sent => sent.Frame));
    }

    [Fact]
    public void A_refusal_is_an_answer()
    {
        var reading = _bench.Read(OfGateway);
        _bench.Bus.When("713#023E00", 2, "71B#037F3E11");
        Assert.True(_bench.OthersAnswer(OfGateway, reading.Stamp));
    }

    [Fact]
    public void Nobody_is_asked_when_another_was_heard_since()
    {
        var since = _bench.Time.GetTimestamp();
        _bench.Bus.When("713#03222104", 2, "71B#0462210407");
        _bench.Read(Describe.Data("brakes", 0x2104, Describe.Number(8)));
        _bench.Bus.Sent.Clear();
        Assert.True(_bench.OthersAnswer(OfGateway, since));
        Assert.Empty(_bench.Bus.Sent);
    }

    [Fact]
    public void The_unit_in_question_does_not_speak_for_itself()
    {
        var since = _bench.Time.GetTimestamp();
        _bench.Bus.When("710#03222104", 2, "718#037F2231");
        _bench.Read(OfGateway);
        Assert.False(_bench.OthersAnswer(OfGateway, since));
    }

    [Fact]
    public void Those_heard_last_are_asked_first()
    {
        _bench.Bus.When("7E1#03222104", 2, "7E9#0462210407");
        _bench.Read(Describe.Data("transmission", 0x2104, Describe.Number(8)));
        var reading = _bench.Read(OfGateway);
        _bench.Bus.When("7E1#023E00", 2, "7E9#027E00");
        Assert.True(_bench.OthersAnswer(OfGateway, reading.Stamp));
        Assert.Equal("7E1#023E00CCCCCCCCCC", _bench.Bus.Sent[^1].Frame);
    }

    [Fact]
    public void No_more_than_three_silent_units_are_asked()
    {
        ControlUnit[] fitted = [.. Enumerable.Range(0, 12).Select(at => new ControlUnit($"unit{at}", 0x700 + (uint)at, 0x740 + (uint)at, null, null))];
        var bench = new BusBench(fitted);
        Assert.False(bench.OthersAnswer(Describe.Data("unit0", 0x2104, Describe.Number(8)), bench.Time.GetTimestamp()));
        Assert.Equal(["701", "702", "703"], bench.Bus.Sent.Select(sent => sent.Frame[..3]));
        Assert.Equal(VehicleBusDevice.MostOthersAsked * 100.25, bench.NowMs, 3);
    }

    [Fact]
    public void On_a_dead_bus_nobody_acknowledges_and_one_attempt_is_enough()
    {
        _bench.Bus.AcknowledgedFrames = 0;
        var reading = _bench.Read(OfGateway);
        Assert.Equal((MissingCause.LinkDown, "gateway: 222104: N_TIMEOUT_A: transmit timeout, the single frame did not go out"), (reading.Missing, reading.Detail));
        Assert.False(_bench.OthersAnswer(OfGateway, reading.Stamp));
        Assert.Equal(2000, _bench.NowMs, 3);
    }

    [Theory]
    [InlineData(LinkState.Down)]
    [InlineData(LinkState.BusOff)]
    public void Without_a_link_nobody_is_asked(LinkState state)
    {
        _bench.Bus.Change(state);
        Assert.False(_bench.OthersAnswer(OfGateway, _bench.Time.GetTimestamp()));
        Assert.Equal(0, _bench.NowMs);
    }

    [Fact]
    public void For_a_signal_without_a_known_sender_any_unit_may_answer()
    {
        var signal = Describe.Signal(0x1A0, 0, 1, cycleMs: 20);
        var reading = _bench.Read(signal);
        _bench.Bus.When("710#023E00", 2, "718#027E00");
        Assert.True(_bench.OthersAnswer(signal, reading.Stamp));
    }
}
