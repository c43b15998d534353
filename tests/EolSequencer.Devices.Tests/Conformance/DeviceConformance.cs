using System.Collections.Immutable;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>
/// What <see cref="IDevice"/> promises, shown for every adapter by a class of its own: the engine relies on nothing else.
/// </summary>
public abstract class DeviceConformance
{
    /// <summary>No exchange lasts longer than this by itself, retries of the protocol included.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    private readonly DeviceRig _rig;

    protected DeviceConformance() => _rig = MakeRig();

    protected abstract DeviceRig MakeRig();

    private IDevice Device => _rig.Device;

    [Fact]
    public void A_read_gives_a_value_from_within_the_call()
    {
        foreach (var (channel, value) in _rig.Steady)
        {
            var from = _rig.Time.GetTimestamp();
            var reading = Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel));
            Assert.Equal(value, reading.Value?.ToString());
            Assert.InRange(reading.Stamp, from, _rig.Time.GetTimestamp());
            Assert.Null(reading.Missing);
        }
    }

    [Fact]
    public void It_says_what_it_is()
    {
        var from = _rig.Time.GetTimestamp();
        var reading = Run(Device.IdentifyAsync);
        Assert.False(string.IsNullOrWhiteSpace(Assert.IsType<TextValue>(reading.Value).ToString()));
        Assert.InRange(reading.Stamp, from, _rig.Time.GetTimestamp());
    }

    [Fact]
    public void All_indexes_are_read_in_the_order_asked_for()
    {
        var backwards = _rig.ByIndex.Reverse().ToList();
        var readings = Run(cancel => Device.ReadEachAsync(_rig.Request(_rig.Indexed), [.. backwards.Select(each => each.Index)], cancel));
        Assert.Equal(backwards.Select(each => each.Value), readings.Select(reading => reading.Value?.ToString()));
    }

    [Fact]
    public void One_index_is_the_same_as_in_all_of_them()
    {
        foreach (var (index, value) in _rig.ByIndex)
        {
            Assert.Equal(value, Run(cancel => Device.ReadAsync(_rig.Request(_rig.Indexed, index), cancel)).Value?.ToString());
        }
    }

    [Fact]
    public void A_watch_hands_on_readings_after_the_call_and_none_after_its_end()
    {
        var (channel, value) = _rig.Steady[0];
        var log = Watch(channel);
        _rig.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.True(log.Readings.Count >= 5);
        Assert.All(log.Readings, reading => Assert.Equal(value, reading.Value?.ToString()));

        var until = log.Readings.Count;
        log.Subscription!.Dispose();
        log.Subscription.Dispose();
        _rig.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(until, log.Readings.Count);
    }

    [Fact]
    public void An_action_is_confirmed()
    {
        var reading = Act();
        Assert.Null(reading.Missing);
        Assert.Null(reading.Detail);
    }

    [Fact]
    public void Silence_ends_by_itself_and_says_what_was_tried()
    {
        var reading = Run(cancel => Device.ReadAsync(_rig.Request(_rig.Silent), cancel));
        Assert.Equal(MissingCause.Silent, reading.Missing);
        Assert.False(string.IsNullOrEmpty(reading.Detail));
        Assert.InRange(_rig.Time.Now, TimeSpan.FromTicks(1), Longest);
    }

    [Fact]
    public void Somebody_else_answers_on_the_link_of_a_silent_one()
    {
        var reading = Run(cancel => Device.ReadAsync(_rig.Request(_rig.Silent), cancel));
        Assert.True(Run(cancel => Device.OthersAnswerAsync(_rig.Request(_rig.Silent), reading.Stamp, cancel)));
    }

    [Fact]
    public void A_read_can_be_given_up_at_any_moment_and_the_next_one_is_right()
    {
        var (channel, value) = _rig.Steady[0];
        var whole = Elapsed(() => Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel)));
        for (var part = 0; part < 40; part++)
        {
            var begun = _rig.Time.Now;
            using var limit = new CancellationTokenSource(whole * part / 40, _rig.Time);
            if (IsGivenUp(() => Device.ReadAsync(_rig.Request(channel), limit.Token))) Assert.Equal(whole * part / 40, _rig.Time.Now - begun);
            else Assert.InRange(part, 36, 39); // With other traffic on the link one read is a little shorter than another.
            Assert.Equal(value, Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel)).Value?.ToString());
        }
    }

    [Fact]
    public void An_action_can_be_given_up_at_any_moment_and_the_next_one_is_right()
    {
        var whole = Elapsed(() => Act());
        for (var part = 0; part < 20; part++)
        {
            var begun = _rig.Time.Now;
            using var limit = new CancellationTokenSource(whole * part / 20, _rig.Time);
            if (IsGivenUp(() => Device.ActAsync(Request(), limit.Token))) Assert.Equal(whole * part / 20, _rig.Time.Now - begun);
            else Assert.InRange(part, 18, 19);
            Assert.Null(Act().Missing);
        }
    }

    [Fact]
    public void Many_calls_at_once_each_get_their_own_answer()
    {
        var asked = Enumerable.Range(0, 12).Select(at => _rig.Steady[at % _rig.Steady.Count]).ToList();
        var readings = _rig.Time.Run(async () =>
        {
            var act = Device.ActAsync(Request(), default).AsTask();
            var reads = await Task.WhenAll(asked.Select(each => Device.ReadAsync(_rig.Request(each.Channel), default).AsTask()));
            Assert.Null((await act).Missing);
            return reads;
        });
        Assert.Equal(asked.Select(each => each.Value), readings.Select(reading => reading.Value?.ToString()));
    }

    [Fact]
    public void Without_a_link_everything_is_missing_as_link_down_and_nothing_throws()
    {
        SetLink(false);
        foreach (var (channel, _) in _rig.Steady) AssertLinkDown(Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel)));
        AssertLinkDown(Act());
        AssertLinkDown(Run(Device.IdentifyAsync));
        Assert.All(Run(cancel => Device.ReadEachAsync(_rig.Request(_rig.Indexed), [.. _rig.ByIndex.Select(each => each.Index)], cancel)), AssertLinkDown);
        Assert.False(Run(cancel => Device.OthersAnswerAsync(_rig.Request(_rig.Silent), _rig.Time.GetTimestamp(), cancel)));
    }

    [Fact]
    public void A_link_that_comes_back_is_used_again()
    {
        var (channel, value) = _rig.Steady[0];
        _rig.Time.At(_rig.Time.Now + TimeSpan.FromTicks(1), () => _rig.SetLink(false));
        Assert.NotNull(Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel)).Missing);
        _rig.Time.Advance(TimeSpan.FromSeconds(2));
        SetLink(true);
        _rig.Time.Advance(_rig.LinkReturns);
        Assert.Equal(value, Run(cancel => Device.ReadAsync(_rig.Request(channel), cancel)).Value?.ToString());
        Assert.Null(Act().Missing);
    }

    [Fact]
    public void A_watch_tells_a_lost_link_once_and_its_return()
    {
        var (channel, value) = _rig.Steady[0];
        var log = Watch(channel);
        _rig.Time.Advance(TimeSpan.FromMilliseconds(500));
        SetLink(false);
        _rig.Time.Advance(TimeSpan.FromSeconds(5));
        SetLink(true);
        _rig.Time.Advance(TimeSpan.FromSeconds(5));
        log.Subscription!.Dispose();
        Assert.Single(log.Readings, reading => reading.Missing is not null);
        Assert.Equal(MissingCause.LinkDown, log.Readings.Single(reading => reading.Missing is not null).Missing);
        Assert.Equal(value, log.Readings[^1].Value?.ToString());
    }

    [Fact]
    public void Closing_twice_is_closing_once_and_a_closed_device_still_answers_its_caller()
    {
        _rig.Time.Run(async () =>
        {
            await Device.DisposeAsync();
            await Device.DisposeAsync();
        });
        Assert.NotNull(Run(cancel => Device.ReadAsync(_rig.Request(_rig.Steady[0].Channel), cancel)).Missing);
        Assert.NotNull(Act().Missing);
        Assert.NotNull(Run(Device.IdentifyAsync).Missing);
    }

    [Fact]
    public void Closing_in_the_middle_of_a_read_ends_it()
    {
        var reading = _rig.Time.Run(async () =>
        {
            var read = Device.ReadAsync(_rig.Request(_rig.Steady[0].Channel), default).AsTask();
            await Device.DisposeAsync();
            return await read;
        });
        Assert.NotNull(reading.Missing);
    }

    private static void AssertLinkDown(Reading reading)
    {
        Assert.Equal(MissingCause.LinkDown, reading.Missing);
        Assert.False(string.IsNullOrEmpty(reading.Detail));
    }

    private ActionRequest Request() => new(_rig.Action.Action, null, _rig.Action.To, ImmutableDictionary<string, Value>.Empty);

    private Reading Act() => Run(cancel => Device.ActAsync(Request(), cancel));

    private void SetLink(bool isUp) => _rig.Time.Run(() =>
    {
        _rig.SetLink(isUp);
        return Task.CompletedTask;
    });

    private T Run<T>(Func<CancellationToken, ValueTask<T>> work) => _rig.Time.Run(() => work(default).AsTask(), horizon: Longest);

    private bool IsGivenUp(Func<ValueTask<Reading>> work) => _rig.Time.Run(async () =>
    {
        try
        {
            Assert.Null((await work()).Missing);
            return false;
        }
        catch (OperationCanceledException)
        {
            return true;
        }
    });

    private TimeSpan Elapsed(Action work)
    {
        var begun = _rig.Time.Now;
        work();
        return _rig.Time.Now - begun;
    }

    private WatchLog Watch(Model.Devices.ChannelDescription channel)
    {
        var log = new WatchLog(_rig.Time);
        _rig.Time.Run(() =>
        {
            log.Subscription = Device.Watch(_rig.Request(channel), TimeSpan.FromMilliseconds(100), log);
            return Task.CompletedTask;
        });
        return log;
    }
}
