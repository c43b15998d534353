using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Signals in cyclic frames: read, watched, gone stale, never seen, on links that hand on every repeat and on such that do not.</summary>
public class BroadcastTests
{
    private static readonly ChannelDescription Ignition = Describe.Signal(0x1A0, 0, 1, cycleMs: 20);

    private readonly BusBench _bench = new();

    [Fact]
    public void A_read_takes_the_next_frame_and_its_moment()
    {
        _bench.Bus.Give("1A0#0100000000000000", 12);
        var reading = _bench.Read(Ignition);
        Assert.Equal(("yes", 12.0, "0100000000000000"), (reading.Value!.ToString(), TimeSpan.FromTicks(reading.Stamp).TotalMilliseconds, Convert.ToHexString(reading.Raw.Span)));
        Assert.Equal(0, _bench.Bus.Listeners);
    }

    [Fact]
    public void All_indexes_come_from_one_arrival()
    {
        var doors = Describe.Channel(new ChannelSource.Broadcast(0x1A0, Describe.Bits(("left", 8, 1), ("right", 9, 1)), Describe.YesNo, TimeSpan.FromMilliseconds(20)));
        _bench.Bus.Give("1A0#0002000000000000", 12);
        var readings = _bench.ReadEach(doors, "left", "right");
        Assert.Equal(["no", "yes"], readings.Select(reading => reading.Value!.ToString()));
        Assert.Equal(readings[0].Stamp, readings[1].Stamp);
    }

    [Fact]
    public void A_signal_that_was_never_seen_is_silent_after_three_cycles()
    {
        var reading = _bench.Read(Ignition);
        Assert.Equal((MissingCause.Silent, "frame 1A0 has not come for 3 cycles of 20 ms"), (reading.Missing, reading.Detail));
        Assert.Equal(60, _bench.NowMs, 3);
    }

    [Fact]
    public void Every_index_of_a_silent_frame_is_silent()
    {
        var doors = Describe.Channel(new ChannelSource.Broadcast(0x1A0, Describe.Bits(("left", 8, 1), ("right", 9, 1)), Describe.YesNo, TimeSpan.FromMilliseconds(20)));
        Assert.Equal([MissingCause.Silent, MissingCause.Silent], _bench.ReadEach(doors, "left", "right").Select(reading => reading.Missing!.Value));
    }

    [Fact]
    public void A_marked_value_is_missing_and_a_short_frame_is_a_short_answer()
    {
        var speed = Describe.Signal(0x1B0, 0, 16, 10, Describe.Number(16, 0.01m, "km/h") with { IsLittleEndian = true, Invalid = [0xFFFF] });
        _bench.Bus.Give("1B0#FFFF000000000000", 5);
        Assert.Equal(MissingCause.InvalidMarker, _bench.Read(speed).Missing);
        _bench.Bus.Give("1B0#12", 5);
        var cut = _bench.Read(speed);
        Assert.Equal((MissingCause.ShortAnswer, "frame 1B0: short answer (1 of 2 bytes)"), (cut.Missing, cut.Detail));
    }

    [Fact]
    public void A_watch_hands_on_every_arrival_and_once_that_the_signal_is_stale()
    {
        var log = _bench.Watch(Ignition);
        _bench.Bus.Give("1A0#01", 20);
        _bench.Bus.Give("1A0#00", 40);
        _bench.Bus.Give("1A0#01", 400);
        _bench.Pass(450);
        Assert.Equal(["20: yes", "40: no", "100: stale", "400: yes"], log.Lines);
    }

    [Fact]
    public void Without_repeats_a_signal_is_fresh_until_the_link_says_that_its_sender_has_stopped()
    {
        _bench.Bus.LeavesOutRepeats = true;
        var log = _bench.Watch(Ignition);
        _bench.Bus.Give("1A0#01", 20);
        _bench.Time.At(TimeSpan.FromMilliseconds(930), () => _bench.Bus.Silence("1A0", lastMs: 920));
        _bench.Bus.Give("1A0#01", 1500);
        _bench.Pass(3000);
        Assert.Equal(["20: yes", "980: stale", "1500: yes"], log.Lines);
    }

    [Fact]
    public void A_frame_from_before_the_start_does_not_count()
    {
        _bench.Bus.GiveEvery("1A0#01", cycleMs: 20, times: 3);
        var request = _bench.Request(Ignition, null) with { NotBefore = TimeSpan.FromMilliseconds(30).Ticks };
        var reading = _bench.Time.Run(() => _bench.Device.ReadAsync(request, default).AsTask());
        Assert.Equal(40, TimeSpan.FromTicks(reading.Stamp).TotalMilliseconds);
    }

    [Fact]
    public void A_lost_link_is_told_at_once_and_the_signal_comes_back_with_it()
    {
        var log = _bench.Watch(Ignition);
        _bench.Bus.Give("1A0#01", 20);
        _bench.Time.At(TimeSpan.FromMilliseconds(30), () => _bench.Bus.Change(LinkState.Down));
        _bench.Time.At(TimeSpan.FromMilliseconds(500), () => _bench.Bus.Change(LinkState.Up));
        _bench.Bus.Give("1A0#00", 510);
        _bench.Pass(520);
        Assert.Equal(["20: yes", "30: link-down", "510: no"], log.Lines);
    }

    [Fact]
    public void A_link_that_comes_back_without_the_signal_is_told_after_three_cycles()
    {
        _bench.Bus.LeavesOutRepeats = true;
        _bench.Bus.Change(LinkState.Down);
        var log = _bench.Watch(Ignition);
        _bench.Time.At(TimeSpan.FromMilliseconds(100), () => _bench.Bus.Change(LinkState.Up));
        _bench.Pass(1000);
        Assert.Equal(["0: link-down", "160: silent"], log.Lines);
    }

    [Fact, Trait("case", "CAN-02")]
    public void A_frame_of_another_format_with_the_same_number_ends_no_wait()
    {
        // Links of some systems hand error frames over with bit 29 set (20000004); no frame of ours can be one.
        Assert.Throws<FormatException>(() => CanFrame.Parse("20000004#0004000000000000"));
        _bench.Bus.Give("00000004#0004000000000000", 5);
        _bench.Bus.Give("004#0100000000000000", 15);
        var reading = _bench.Read(Describe.Signal(0x004, 0, 1, cycleMs: 20));
        Assert.Equal(("yes", 15.0), (reading.Value!.ToString(), TimeSpan.FromTicks(reading.Stamp).TotalMilliseconds));
    }

    [Fact, Trait("case", "ITP-08")]
    public void A_passive_listener_on_a_diagnostic_address_never_transmits()
    {
        var log = _bench.Watch(Describe.Signal(0x718, 0, 8, cycleMs: 1000));
        _bench.Bus.When("710#0322F195", 2, "718#100A62F195413030").When("710#30", 1, "718#2131303031000000");
        Assert.Equal("A001001", _bench.Read(Describe.Data("gateway", 0xF195, Describe.Text(7))).Value!.ToString());
        Assert.Equal(2, log.Lines.Count);
        Assert.Equal(["710#0322F195CCCCCCCC", "710#300000CCCCCCCCCC"], _bench.Bus.Sent.Select(sent => sent.Frame));
    }

    [Fact]
    public void Who_hears_every_arrival_finds_out_himself_that_the_signal_is_stale()
    {
        _bench.Bus.LeavesOutRepeats = true;
        var log = _bench.Watch(Ignition, everyArrival: true);
        _bench.Bus.Give("1A0#01", 20);
        _bench.Bus.Give("1A0#01", 40);
        _bench.Pass(450);
        Assert.Equal(["20: yes", "40: yes", "100: stale"], log.Lines);
    }

    [Fact]
    public void A_disposed_watch_hears_nothing_more()
    {
        var log = _bench.Watch(Ignition);
        log.Subscription!.Dispose();
        log.Subscription.Dispose();
        _bench.Bus.Give("1A0#01", 20);
        _bench.Time.At(TimeSpan.FromMilliseconds(30), () => _bench.Bus.Change(LinkState.Down));
        _bench.Pass(200);
        Assert.Empty(log.Lines);
        Assert.Equal(0, _bench.Bus.Listeners);
    }
}
