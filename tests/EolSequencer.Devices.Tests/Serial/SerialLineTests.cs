using System.Diagnostics;
using System.Text;
using EolSequencer.Devices.Serial;
using EolSequencer.Devices.Tests.Kit;

namespace EolSequencer.Devices.Tests.Serial;

/// <summary>
/// A serial port over a pseudo-terminal: what the framework's port does when its cable is pulled is measured, not promised, and none
/// of it may reach a run.
/// </summary>
[Trait("case", "SER-01")]
public sealed class SerialLineTests : IDisposable
{
    private readonly Cable _cable = new();
    private readonly LineLog _log = new();

    public void Dispose() => _cable.Dispose();

    [Fact]
    public void Bytes_pass_both_ways_unchanged_with_stamps_in_order() => RealTime.Run(async time =>
    {
        await using var line = await OpenAsync(time);
        var all = Encoding.Latin1.GetString([.. Enumerable.Range(0, 256).Select(at => (byte)at)]);
        var from = time.GetTimestamp();
        Assert.Null(await line.SendAsync(Encoding.Latin1.GetBytes(all), default));
        await RealTime.Until(() => _cable.Written == all, "what was sent");
        _cable.Give(all);
        await RealTime.Until(() => _log.Text == all, "what was given");
        Assert.Equal(_log.Stamps.Order(), _log.Stamps);
        Assert.InRange(_log.Stamps[0], from, time.GetTimestamp());
    });

    [Fact]
    public void What_is_sent_at_once_goes_out_in_the_order_of_the_calls() => RealTime.Run(async time =>
    {
        await using var line = await OpenAsync(time);
        var sendings = Enumerable.Range(0, 50).Select(at => line.SendAsync(Encoding.Latin1.GetBytes($"{at};"), default).AsTask()).ToList();
        Assert.All(await Task.WhenAll(sendings), Assert.Null);
        var all = string.Concat(Enumerable.Range(0, 50).Select(at => $"{at};"));
        await RealTime.Until(() => _cable.Written == all, "all of it");
    });

    [Fact]
    public void A_port_that_is_not_there_is_told_in_words() => RealTime.Run(async time =>
    {
        var (line, fault) = await SerialLine.OpenAsync(new SerialForm("/dev/no-such-port", 9600), time, _log, default);
        Assert.Null(line);
        Assert.Equal("/dev/no-such-port is not there; is it plugged in?", fault);
    });

    [Fact]
    public void A_pulled_cable_is_noticed_by_itself_and_the_port_is_opened_again_by_its_name() => RealTime.Run(async time =>
    {
        await using var line = await OpenAsync(time);
        for (var times = 1; times <= 3; times++)
        {
            _cable.Pull();
            await RealTime.Until(() => !line.IsUp, "the news that the port is gone");
            Assert.False(_log.Changes[^1].IsUp);
            Assert.Contains(_cable.Port, _log.Changes[^1].Cause, StringComparison.Ordinal);
            Assert.NotNull(await line.SendAsync("lost"u8.ToArray(), default));
            _cable.Plug();
            await RealTime.Until(() => line.IsUp, "the port");
            Assert.Equal((true, null), _log.Changes[^1]);
            Assert.Null(await line.SendAsync(Encoding.Latin1.GetBytes($"again {times}"), default));
            await RealTime.Until(() => _cable.Written.EndsWith($"again {times}", StringComparison.Ordinal), "what was sent");
            _cable.Give($"here {times}");
            await RealTime.Until(() => _log.Text.EndsWith($"here {times}", StringComparison.Ordinal), "what was given");
        }

        Assert.DoesNotContain("lost", _cable.Written, StringComparison.Ordinal);
        Assert.Equal(6, _log.Changes.Count);
    });

    [Fact]
    public void A_send_that_is_cut_off_says_why_and_never_hangs() => RealTime.Run(async time =>
    {
        await using var line = await OpenAsync(time);
        var begun = Stopwatch.GetTimestamp();
        var sending = line.SendAsync(new byte[1_000_000], default).AsTask();
        _cable.Pull();
        Assert.Contains(_cable.Port, await sending, StringComparison.Ordinal);
        Assert.True(Stopwatch.GetElapsedTime(begun) < TimeSpan.FromSeconds(4));
        _cable.Plug();
    });

    [Fact]
    [Trait("case", "SER-02")]
    public void A_send_can_be_given_up_and_the_next_goes_out() => RealTime.Run(async time =>
    {
        await using var line = await OpenAsync(time);
        using var limit = new CancellationTokenSource();
        var first = line.SendAsync("a"u8.ToArray(), default).AsTask();
        var second = line.SendAsync("b"u8.ToArray(), limit.Token).AsTask();
        limit.Cancel();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        Assert.Null(await first);
        Assert.Null(await line.SendAsync("c"u8.ToArray(), default));
        await RealTime.Until(() => _cable.Written.EndsWith('c'), "the next");
    });

    [Fact]
    public void Closing_is_at_once_whatever_the_port_does_and_twice_is_once() => RealTime.Run(async time =>
    {
        var line = await OpenAsync(time);
        _ = line.SendAsync(new byte[1_000_000], default).AsTask();
        _cable.Pull();
        var begun = Stopwatch.GetTimestamp();
        await line.DisposeAsync();
        await line.DisposeAsync();
        Assert.True(Stopwatch.GetElapsedTime(begun) < TimeSpan.FromMilliseconds(500));
        Assert.Equal("the line is closed", await line.SendAsync("x"u8.ToArray(), default));
        _cable.Plug();
        await Task.Delay(SerialLine.Retry * 2, time);
        Assert.False(line.IsUp);
        Assert.Empty(_log.Changes);
    });

    private async Task<SerialLine> OpenAsync(TimeProvider time)
    {
        var (line, fault) = await SerialLine.OpenAsync(new SerialForm(_cable.Port, 115_200), time, _log, default);
        Assert.Null(fault);
        return line!;
    }
}
