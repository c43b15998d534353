using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>A link that goes at any moment of an exchange and comes back, and a device that is closed; each is a reading with a cause, never an exception.</summary>
public class LinkTests
{
    private static readonly ChannelDescription Part = Describe.Data("gateway", 0xF187, Describe.Text(4));
    private static readonly ActionDescription Horn = Describe.Control("gateway", Describe.YesNo, ("", 0x2201));

    private readonly BusBench _bench = new();

    [Theory]
    [InlineData(LinkState.Down, "the link is down")]
    [InlineData(LinkState.BusOff, "the link is bus-off")]
    public void Without_a_link_nothing_is_tried(LinkState state, string detail)
    {
        _bench.Bus.Change(state);
        Reading(MissingCause.LinkDown, detail, _bench.Read(Part));
        Reading(MissingCause.LinkDown, detail, _bench.Act(Horn, TruthValue.Yes));
        Assert.All(_bench.ReadEach(Part, "a", "b"), reading => Reading(MissingCause.LinkDown, detail, reading));
        Assert.Equal(0, _bench.NowMs);
    }

    /// <summary>0.25 ms to the bus, the first frame at 5.25 ms, its flow control out at 5.5 ms, the last frame at 25.5 ms.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(3)]
    [InlineData(5.3)]
    [InlineData(15)]
    public void A_link_lost_in_the_middle_ends_the_read_and_the_next_one_works(double lostAtMs)
    {
        _bench.Bus.When("710#0322F187", 5, "718#101162F187414243").When("710#30", 20, "718#2144454647484950", "718#225152535400");
        _bench.Time.At(TimeSpan.FromMilliseconds(lostAtMs), () => _bench.Bus.Change(LinkState.Down));
        var lost = _bench.Read(Part);
        Assert.NotNull(lost.Missing);
        Assert.NotNull(lost.Detail);

        _bench.Pass(2000);
        _bench.Bus.Change(LinkState.Up);
        _bench.Bus.Always("710#0322F187", 5, "718#0762F18741424344");
        Assert.Equal("ABCD", _bench.Read(Part).Value!.ToString());
    }

    [Fact]
    public void A_poll_tells_the_loss_once_and_goes_on_when_the_link_is_back()
    {
        _bench.Bus.Always("710#0322F187", 5, "718#0762F18741424344");
        var log = _bench.Watch(Part, everyMs: 50);
        _bench.Time.At(TimeSpan.FromMilliseconds(70), () => _bench.Bus.Change(LinkState.Down));
        _bench.Time.At(TimeSpan.FromMilliseconds(280), () => _bench.Bus.Change(LinkState.Up));
        _bench.Pass(360);
        log.Subscription!.Dispose();
        Assert.Equal(["5.25: ABCD", "55.25: ABCD", "100: link-down", "305.25: ABCD", "355.25: ABCD"], log.Lines);
    }

    [Fact]
    public void Closing_twice_is_closing_once_and_a_closed_device_says_so()
    {
        _bench.Time.Run(async () =>
        {
            await _bench.Device.DisposeAsync();
            await _bench.Device.DisposeAsync();
        });
        Reading(MissingCause.LinkDown, "the device is closed", _bench.Read(Part));
        Reading(MissingCause.LinkDown, "the device is closed", _bench.Act(Horn, TruthValue.Yes));
        Assert.Empty(_bench.Bus.Sent);
    }

    [Fact]
    public void Closing_takes_back_what_waits_for_the_bus_and_leaves_no_listener()
    {
        _bench.Bus.AcknowledgedFrames = 0;
        var reading = _bench.Time.Run(async () =>
        {
            var waiting = _bench.Device.ReadAsync(_bench.Request(Part, null), default).AsTask();
            await _bench.Device.DisposeAsync();
            return await waiting;
        });
        Assert.Equal(MissingCause.LinkDown, reading.Missing);
        Assert.Equal((0.0, 0), (_bench.NowMs, _bench.Bus.Listeners));
    }

    private static void Reading(MissingCause cause, string detail, Model.Ports.Reading reading) =>
        Assert.Equal((cause, detail), (reading.Missing, reading.Detail));
}
