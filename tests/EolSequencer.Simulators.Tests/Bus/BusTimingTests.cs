using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.Bus;

/// <summary>Stamps of a rehearsal must be those of a real line: frames take their bits, and one goes after the other.</summary>
public sealed class BusTimingTests
{
    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly SimulatedCanBus _bus;
    private readonly BusPort _tester;
    private readonly BusPort _unit;
    private readonly HeardFrames _heard = new();

    public BusTimingTests()
    {
        _bus = new SimulatedCanBus(_time, new BusSpeed(500_000));
        _tester = _bus.Attach();
        _unit = _bus.Attach();
    }

    // Total lengths, three bits of intermission included: published CAN frame length program of the Linux can-utils,
    // checked against an independent bit-by-bit count.
    [Theory]
    [InlineData("000#", 53)]
    [InlineData("000#0000000000000000", 127)]
    [InlineData("7E8#FFFFFFFFFFFFFFFF", 125)]
    [InlineData("7E0#0322F190CCCCCCCC", 114)]
    [InlineData("7DF#02010C0000000000", 123)]
    [InlineData("18DA55F1#0322F190CCCCCCCC", 134)]
    public void A_frame_arrives_after_its_bits_without_the_intermission(string text, int bits)
    {
        var frame = CanFrame.Parse(text);
        _unit.Listen(frame.Id, _heard, Repeats.All);
        var sent = _time.Run(() => _tester.SendAsync(frame, default).AsTask());
        var expected = TimeSpan.FromMicroseconds(2 * (bits - 3));
        Assert.Equal([(text, expected)], _heard.Frames);
        Assert.Equal(new Transmission(LinkState.Up, expected.Ticks), sent);
    }

    [Fact]
    public void The_next_frame_begins_behind_the_intermission()
    {
        var frame = CanFrame.Parse("7E0#0322F190CCCCCCCC");
        _unit.Listen(frame.Id, _heard, Repeats.All);
        _tester.Send(frame);
        _tester.Send(frame);
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal([TimeSpan.FromMicroseconds(222), TimeSpan.FromMicroseconds(228 + 222)], _heard.Frames.Select(f => f.At));
    }

    [Theory]
    [InlineData("7E8#01", "7E0#01")]
    [InlineData("00000001#01", "000#01")] // base wins over an extended frame with the same first eleven bits
    [InlineData("1FFFFFFF#01", "123#01")]
    [InlineData("18DA55F1#01", "18DA54F1#01")]
    public void Of_frames_that_wait_together_the_lower_identifier_goes_first(string low, string high)
    {
        foreach (var text in new[] { low, high }) _bus.Attach().Listen(CanFrame.Parse(text).Id, _heard, Repeats.All);
        _unit.Send(CanFrame.Parse(low));
        _tester.Send(CanFrame.Parse(high));
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal([high, low], _heard.Frames.Select(f => f.Frame));
    }

    [Fact]
    public void A_frame_on_the_wire_is_not_interrupted_by_a_more_urgent_one()
    {
        foreach (var id in new[] { 0x7E0u, 0x001u }) _bus.Attach().Listen(CanId.Base(id), _heard, Repeats.All);
        _tester.Send(CanFrame.Parse("7E0#0102030405060708"));
        _time.Advance(TimeSpan.FromMicroseconds(50));
        _unit.Send(CanFrame.Parse("001#"));
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal(["7E0#0102030405060708", "001#"], _heard.Frames.Select(f => f.Frame));
    }

    [Fact]
    public void Frames_of_one_port_go_out_in_the_order_of_the_calls()
    {
        _unit.Listen(CanId.Base(0x7E0), _heard, Repeats.All);
        _unit.Listen(CanId.Base(0x001), _heard, Repeats.All);
        _tester.Send(CanFrame.Parse("7E0#01"));
        _tester.Send(CanFrame.Parse("001#02"));
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal(["7E0#01", "001#02"], _heard.Frames.Select(f => f.Frame));
    }

    [Fact]
    public void Nobody_hears_his_own_frames_or_those_of_an_ended_listening()
    {
        var frame = CanFrame.Parse("123#00");
        _tester.Listen(frame.Id, _heard, Repeats.All);
        _unit.Listen(frame.Id, _heard, Repeats.All).Dispose();
        _tester.Send(frame);
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Empty(_heard.Frames);
    }

    [Fact]
    public void A_cancelled_frame_that_still_waits_never_goes_out()
    {
        _unit.Listen(CanId.Base(0x7E0), _heard, Repeats.All);
        _time.Run(async () =>
        {
            using var cancel = new CancellationTokenSource();
            _unit.Send(CanFrame.Parse("001#0102030405060708"));
            await Task.Delay(TimeSpan.FromMicroseconds(10), _time, CancellationToken.None);
            var sending = _tester.SendAsync(CanFrame.Parse("7E0#01"), cancel.Token).AsTask();
            cancel.Cancel();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => sending);
            await Task.Delay(TimeSpan.FromMilliseconds(2), _time, CancellationToken.None);
        });
        Assert.Empty(_heard.Frames);
    }

    [Fact]
    public void A_cancelled_frame_that_is_on_the_wire_goes_out_all_the_same()
    {
        _unit.Listen(CanId.Base(0x7E0), _heard, Repeats.All);
        _time.Run(async () =>
        {
            using var cancel = new CancellationTokenSource(TimeSpan.FromMicroseconds(50), _time);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _tester.SendAsync(CanFrame.Parse("7E0#01"), cancel.Token).AsTask());
            await _tester.SendAsync(CanFrame.Parse("7E0#02"), default);
        });
        Assert.Equal(["7E0#01", "7E0#02"], _heard.Frames.Select(f => f.Frame));
    }

    [Fact]
    public void On_a_broken_line_nothing_arrives_and_nothing_is_confirmed()
    {
        _unit.Listen(CanId.Base(0x7E0), _heard, Repeats.All);
        _bus.SetIntact(false);
        _time.Run(async () =>
        {
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(1), _time);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _tester.SendAsync(CanFrame.Parse("7E0#01"), limit.Token).AsTask());
        });
        Assert.Empty(_heard.Frames);
        Assert.Equal(TimeSpan.FromSeconds(1), _time.Now);
    }

    [Fact]
    public void A_frame_caught_by_a_break_goes_out_when_the_line_is_whole_again()
    {
        _unit.Listen(CanId.Base(0x7E0), _heard, Repeats.All);
        _time.At(TimeSpan.FromMicroseconds(100), () => _bus.SetIntact(false));
        _time.At(TimeSpan.FromSeconds(2), () => _bus.SetIntact(true));
        var sent = _time.Run(() => _tester.SendAsync(CanFrame.Parse("7E0#01"), default).AsTask());
        Assert.True(sent.IsConfirmed);
        Assert.InRange(_time.Now, TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(2.001));
        Assert.Single(_heard.Frames);
    }

    [Fact]
    public void A_port_whose_link_goes_down_says_so_to_all_that_waits()
    {
        var news = new List<LinkChange>();
        _tester.LinkChanged += news.Add;
        _time.At(TimeSpan.FromMicroseconds(100), () => _tester.Change(LinkState.BusOff));
        _time.Run(async () =>
        {
            var first = _tester.SendAsync(CanFrame.Parse("7E0#01"), default);
            var second = _tester.SendAsync(CanFrame.Parse("7E0#02"), default);
            Assert.Equal(LinkState.BusOff, (await first).Link);
            Assert.Equal(LinkState.BusOff, (await second).Link);
            Assert.Equal(LinkState.BusOff, (await _tester.SendAsync(CanFrame.Parse("7E0#03"), default)).Link);
        });
        Assert.Equal([new LinkChange(LinkState.BusOff, 1000)], news);
    }
}
