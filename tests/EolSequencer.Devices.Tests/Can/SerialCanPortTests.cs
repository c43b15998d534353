using EolSequencer.Devices.Can;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Can;

/// <summary>A CAN interface on a serial line: what it refuses, loses and garbles is counted, and never taken for data.</summary>
public class SerialCanPortTests
{
    private readonly SerialCanBench _bench = new();

    [Fact]
    public void It_is_closed_given_its_speed_and_opened()
    {
        Assert.Null(_bench.Open());
        Assert.Equal("\r\rC\rS6\rO\r", _bench.Line.Written);
        Assert.Equal(LinkState.Up, _bench.Port.State);
    }

    [Fact]
    public void Frames_that_still_come_while_it_is_opened_are_nobody_s()
    {
        _bench.Says = line => line is "C" ? "t1232BEEF\r\r" : line is "" ? "EEF\r\a" : SerialCanBench.Well(line);
        Assert.Null(_bench.Open());
        Assert.Equal(0, _bench.Port.Health.Garbled);
    }

    [Theory]
    [InlineData("S6", "does not take the bus speed (S6)")]
    [InlineData("O", "does not open the bus (O)")]
    public void A_refusal_at_the_opening_is_told(string command, string mentions)
    {
        _bench.Says = line => line == command ? "\a" : SerialCanBench.Well(line);
        Assert.Contains(mentions, _bench.Open(), StringComparison.Ordinal);
        Assert.True(_bench.Line.IsClosed);
    }

    [Fact]
    public void Something_that_does_not_answer_is_no_such_interface()
    {
        _bench.Says = _ => null;
        Assert.Contains("is it a serial-line CAN interface", _bench.Open(), StringComparison.Ordinal);
        Assert.True(_bench.Time.Now < TimeSpan.FromSeconds(2));
    }

    [Theory]
    [InlineData("7E0#0322F190", "t7E040322F190\r")]
    [InlineData("18DA10F1#023E00", "T18DA10F13023E00\r")]
    public void A_frame_is_sent_and_confirmed(string frame, string line)
    {
        _bench.Open();
        var sent = _bench.Send(frame)!.Value;
        Assert.True(sent.IsConfirmed);
        Assert.EndsWith(line, _bench.Line.Written, StringComparison.Ordinal);
        Assert.Equal(_bench.Time.GetTimestamp(), sent.Stamp);
    }

    [Fact]
    public void A_bare_carriage_return_confirms_as_well()
    {
        _bench.Says = _ => "\r";
        _bench.Open();
        Assert.True(_bench.Send("7E0#01")!.Value.IsConfirmed);
    }

    [Fact]
    public void An_interface_that_answers_nothing_is_believed_when_the_station_says_so()
    {
        var bench = new SerialCanBench(answers: false) { Says = _ => null };
        Assert.Null(bench.Open());
        Assert.True(bench.Send("7E0#01")!.Value.IsConfirmed);
    }

    [Fact]
    [Trait("case", "CAN-01")]
    public void A_hundred_frames_at_once_go_out_in_order_through_a_queue_that_is_often_full()
    {
        var (room, taken) = (10, new List<string>());
        _bench.Open();
        _bench.Says = line =>
        {
            if (room == 0) return "\a";
            room--;
            _bench.Time.At(_bench.Time.Now + TimeSpan.FromMilliseconds(8), () => room++);
            taken.Add(line);
            return "z\r";
        };
        var sent = _bench.Time.Run(() => Task.WhenAll(Enumerable.Range(0, 100).Select(at => _bench.Port.SendAsync(CanFrame.Parse($"7E0#{at:X2}"), default).AsTask())));
        Assert.All(sent, one => Assert.True(one.IsConfirmed));
        Assert.Equal(Enumerable.Range(0, 100).Select(at => $"t7E01{at:X2}"), taken);
    }

    [Fact]
    [Trait("case", "CAN-01")]
    public void A_queue_that_stays_full_is_the_sender_s_limit_and_the_frame_is_not_sent_later()
    {
        _bench.Open();
        _bench.Says = _ => "\a";
        Assert.Null(_bench.Send("7E0#01", withinMs: 100));
        Assert.True(_bench.Port.Health.FullQueues > 5);
        _bench.Says = SerialCanBench.Well;
        _bench.Time.Advance(TimeSpan.FromSeconds(2));
        var before = _bench.Line.Written.Length;
        Assert.True(_bench.Send("7E0#02")!.Value.IsConfirmed);
        Assert.Equal("t7E0102\r", _bench.Line.Written[before..]);
    }

    [Fact]
    public void An_answer_that_comes_after_its_sender_gave_up_confirms_no_other_frame()
    {
        _bench.Open();
        _bench.Says = _ => null;
        Assert.Null(_bench.Send("7E0#01", withinMs: 50));
        var second = _bench.Time.Run(async () =>
        {
            var sending = _bench.Port.SendAsync(CanFrame.Parse("7E0#02"), default).AsTask();
            Assert.DoesNotContain("t7E0102", _bench.Line.Written, StringComparison.Ordinal);
            _bench.Says = SerialCanBench.Well;
            _bench.Line.Give("z\r");
            return await sending;
        });
        Assert.True(second.IsConfirmed);
        Assert.EndsWith("t7E0101\rt7E0102\r", _bench.Line.Written, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_that_never_comes_holds_the_next_frame_up_for_a_time_and_no_longer()
    {
        _bench.Open();
        _bench.Says = line => line.EndsWith("01", StringComparison.Ordinal) ? null : SerialCanBench.Well(line);
        Assert.Null(_bench.Send("7E0#01", withinMs: 50));
        Assert.True(_bench.Send("7E0#02", withinMs: 3000)!.Value.IsConfirmed);
    }

    [Fact]
    public void Frames_reach_those_who_listen_for_them()
    {
        _bench.Open();
        _bench.Hear("7E8");
        _bench.Give("t7E8");
        _bench.Give("80641004812CCAAAA\rt7E9101\r\nT000007E8102\r");
        Assert.Equal(["7E8#0641004812CCAAAA"], _bench.Heard);
    }

    [Fact]
    [Trait("case", "CAN-02")]
    public void Errors_and_remote_frames_are_counted_and_end_no_waiting()
    {
        _bench.Open();
        _bench.Hear("004");
        _bench.Give("e1a\rsw096000\rr0040\re2co\r");
        Assert.Empty(_bench.Heard);
        var health = _bench.Port.Health;
        Assert.Equal((2, 1, 1, 1), (health.Errors, health.Warnings, health.Remotes, health.ReceiveOverflows));
        Assert.Contains(_bench.Notes, note => note.Contains("received frames were lost", StringComparison.Ordinal));
    }

    [Fact]
    public void Garbled_lines_are_counted_told_once_and_summed_up_at_the_end()
    {
        _bench.Open();
        _bench.Hear("123");
        _bench.Give("t12x2BEEF\r1232BEEF\rt1232BEEF\r");
        Assert.Equal(["123#BEEF"], _bench.Heard);
        Assert.Equal(2, _bench.Port.Health.Garbled);
        Assert.Single(_bench.Notes);
        _bench.Time.Run(() => _bench.Port.DisposeAsync().AsTask());
        Assert.Equal("in all: 2 x garbled", _bench.Notes[^1]);
    }

    [Fact]
    public void Bus_off_ends_what_is_under_way_and_the_controller_is_started_again()
    {
        var changes = new List<LinkState>();
        _bench.Open();
        _bench.Port.LinkChanged += change => changes.Add(change.State);
        _bench.Says = _ => null;
        var sent = _bench.Time.Run(async () =>
        {
            var sending = _bench.Port.SendAsync(CanFrame.Parse("7E0#01"), default).AsTask();
            _bench.Line.Give("sb000256\r");
            return await sending;
        });
        Assert.Equal(LinkState.BusOff, sent.Link);
        Assert.Equal(LinkState.BusOff, _bench.Send("7E0#02")!.Value.Link);
        _bench.Says = SerialCanBench.Well;
        _bench.Time.Advance(SerialCanPort.RestartPause + TimeSpan.FromSeconds(1));
        Assert.Equal([LinkState.BusOff, LinkState.Up], changes);
        Assert.EndsWith("C\rS6\rO\r", _bench.Line.Written, StringComparison.Ordinal);
        Assert.Contains(_bench.Notes, note => note.Contains("bus-off", StringComparison.Ordinal));
    }

    [Fact]
    public void A_line_that_is_lost_ends_what_is_under_way_and_is_opened_anew_when_it_is_back()
    {
        var changes = new List<LinkState>();
        _bench.Open();
        _bench.Hear("123");
        _bench.Port.LinkChanged += change => changes.Add(change.State);
        _bench.Give("t1232BE");
        _bench.Line.SetLink(false);
        Assert.Equal(LinkState.Down, _bench.Send("7E0#01")!.Value.Link);
        _bench.Time.Advance(TimeSpan.FromSeconds(3));
        _bench.Time.Run(() =>
        {
            _bench.Line.SetLink(true);
            return Task.CompletedTask;
        });
        _bench.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal([LinkState.Down, LinkState.Up], changes);
        _bench.Give("t1231AA\r");
        Assert.Equal(["123#AA"], _bench.Heard);
    }

    [Fact]
    public void Closing_leaves_the_bus_and_ends_what_waits()
    {
        _bench.Open();
        _bench.Says = line => line == "C" ? "\r" : null;
        var sent = _bench.Time.Run(async () =>
        {
            var sending = _bench.Port.SendAsync(CanFrame.Parse("7E0#01"), default).AsTask();
            await _bench.Port.DisposeAsync();
            await _bench.Port.DisposeAsync();
            return await sending;
        });
        Assert.Equal(LinkState.Down, sent.Link);
        Assert.EndsWith("C\r", _bench.Line.Written, StringComparison.Ordinal);
        Assert.True(_bench.Line.IsClosed);
    }
}
