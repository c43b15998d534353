using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.Bus;

/// <summary>Lazy cyclic frames must look to every listener as if the unit had sent them all the time.</summary>
public sealed class CyclicFrameTests
{
    private static readonly CanId Id = CanId.Base(0x1A0);
    private static readonly TimeSpan Phase = TimeSpan.FromMilliseconds(3);

    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly SimulatedCanBus _bus;
    private readonly BusPort _tester;
    private readonly CyclicFrame _frame;
    private readonly HeardFrames _heard = new();
    private byte _value;
    private bool _isMoving;
    private int _looks;

    public CyclicFrameTests()
    {
        _bus = new SimulatedCanBus(_time, new BusSpeed(500_000));
        _tester = _bus.Attach();
        _frame = new CyclicFrame(_bus, _bus.Attach(), Id, 1, 20.Ms, Phase, (now, payload) =>
        {
            _looks++;
            payload[0] = _isMoving ? (byte)(now.Ticks / TimeSpan.TicksPerMillisecond / 50) : _value;
            return _isMoving;
        });
    }

    [Fact]
    public void Without_a_listener_nothing_happens()
    {
        _time.Advance(TimeSpan.FromHours(1));
        Assert.Equal(0, _looks);
        Assert.Equal(0, _bus.FrameCount);
    }

    [Fact]
    public void Whoever_wants_all_gets_one_a_cycle()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.All);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(50, _heard.Frames.Count);
        Assert.All(_heard.Frames.Zip(_heard.Frames.Skip(1)), pair => Assert.Equal(20.Ms, pair.Second.At - pair.First.At));
    }

    [Fact]
    public void Whoever_can_do_without_repeats_gets_the_first_and_each_change_at_the_next_instant()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.At(1_000.Ms, () => Change(7));
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(["1A0#00", "1A0#07"], _heard.Frames.Select(f => f.Frame));
        var lengthOfFrame = _bus.TimeToEnd(CanFrame.Parse("1A0#07"));
        Assert.Equal(Phase + 1_000.Ms + lengthOfFrame, _heard.Frames[1].At); // 1,000 is 50 whole cycles
        Assert.InRange(_looks, 2, 3);
    }

    [Fact]
    public void A_value_that_moves_by_itself_is_looked_at_in_every_cycle()
    {
        _isMoving = true;
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(50, _looks);
        Assert.Equal(20, _heard.Frames.Count);
    }

    [Fact]
    public void Skipping_hears_the_same_changes_at_the_same_moments_as_hearing_all()
    {
        var all = new HeardFrames();
        using var one = _bus.Attach().Listen(Id, all, Repeats.All);
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        foreach (var (at, value) in new[] { (5, 1), (23, 2), (24, 3), (500, 3), (777, 1) }) _time.At(at.Ms, () => Change((byte)value));
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(Changes(all), Changes(_heard));

        static IEnumerable<(string, TimeSpan)> Changes(HeardFrames heard)
        {
            var last = "";
            foreach (var frame in heard.Frames)
            {
                if (frame.Frame != last) yield return frame;
                last = frame.Frame;
            }
        }
    }

    [Fact]
    public void A_sender_that_stops_is_told_with_the_end_of_its_last_frame_left_out_ones_included()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.At(5_010.Ms, () => _frame.Switch(false));
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Single(_heard.Frames);
        Assert.Equal([(Id, Phase + 5_000.Ms + _bus.TimeToEnd(CanFrame.Parse("1A0#00")))], _heard.Silences);
    }

    [Fact]
    public void A_frame_cut_off_by_the_stop_is_not_the_last_one()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.At(Phase + 5_000.Ms + TimeSpan.FromMicroseconds(20), () => _frame.Switch(false));
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal([(Id, Phase + 4_980.Ms + _bus.TimeToEnd(CanFrame.Parse("1A0#00")))], _heard.Silences);
    }

    [Fact]
    public void A_sender_that_begins_again_is_received_again()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.At(1_000.Ms, () => _frame.Switch(false));
        _time.At(2_000.Ms, () => _frame.Switch(true));
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(["1A0#00", "1A0#00"], _heard.Frames.Select(f => f.Frame));
        Assert.Single(_heard.Silences);
    }

    [Fact]
    public void A_broken_line_silences_the_sender()
    {
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _time.At(1_000.Ms, () => _bus.SetIntact(false));
        _time.Advance(TimeSpan.FromSeconds(10));
        Assert.Single(_heard.Frames);
        Assert.Single(_heard.Silences);
    }

    [Fact]
    public void A_silence_is_not_told_to_who_has_heard_nothing_or_wants_all()
    {
        var all = new HeardFrames();
        using var one = _bus.Attach().Listen(Id, all, Repeats.All);
        _time.Advance(TimeSpan.FromMilliseconds(500));
        using var listening = _tester.Listen(Id, _heard, Repeats.MayBeSkipped);
        _frame.Switch(false);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Empty(_heard.Silences);
        Assert.Empty(all.Silences);
    }

    private void Change(byte value)
    {
        _value = value;
        _bus.Wake();
    }
}
