using EolSequencer.Simulators.Tests.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.Time;

/// <summary>A simulator that is watched in real time runs on timers of the station's clock; it must behave as in virtual time.</summary>
public sealed class ClockScheduleTests
{
    [Fact]
    public void On_a_plain_clock_the_vehicle_answers_as_in_virtual_time()
    {
        var (virtualTime, virtualVehicle) = Vans.New();
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        using var vehicle = new SimulatedVehicle(Vans.Facts(Vans.Petrol), new PlainClock(time, 1_000_000_000), 1);
        Assert.Equal(Talk(virtualTime, virtualVehicle, 1), Talk(time, vehicle, 100));

        static List<string> Talk(VirtualTime time, SimulatedVehicle vehicle, long stampsPerTick)
        {
            var heard = new HeardFrames();
            foreach (var id in new uint[] { 0x718, 0x1A0, 0x1A8 }) vehicle.Port.Listen(CanId.Base(id), heard, Repeats.MayBeSkipped);
            foreach (var frame in new[] { "710#021003", "710#0322F187", "710#300000", "710#042F22100301" })
            {
                vehicle.Port.SendAsync(CanFrame.Parse(frame), default);
                time.Advance(TimeSpan.FromMilliseconds(40));
            }

            vehicle.Van.Ignition.Press();
            vehicle.Van.Windows.Drive(1, up: false);
            time.Advance(TimeSpan.FromSeconds(6));
            Assert.True(heard.Frames[^1].At.Ticks / stampsPerTick <= time.GetTimestamp());

            // Timers of a plain clock count whole milliseconds, so a moving window is seen a hair later on its way.
            return [.. heard.Frames.Select(frame => frame.Frame).Where(frame => frame.StartsWith("718", StringComparison.Ordinal)), heard.Frames[^1].Frame];
        }
    }

    [Fact]
    public void Things_happen_at_their_moments_in_order_and_not_after_the_end()
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        time.Advance(TimeSpan.FromSeconds(100));
        var schedule = new ClockSchedule(new PlainClock(time, 1_000));
        var order = new List<(int What, TimeSpan At)>();
        var noted = new Noting(what => order.Add((what, schedule.Now)));
        schedule.At(TimeSpan.FromMilliseconds(30), noted, 3);
        schedule.At(TimeSpan.FromMilliseconds(10), noted, 1);
        schedule.At(TimeSpan.FromMilliseconds(10), noted, 2);
        schedule.At(TimeSpan.FromMilliseconds(50), noted, 4);
        time.Advance(TimeSpan.FromMilliseconds(40));
        schedule.Dispose();
        time.Advance(TimeSpan.FromMilliseconds(40));
        Assert.Equal([(1, 10.Ms), (2, 10.Ms), (3, 30.Ms)], order);
    }

    [Fact]
    public void What_follows_at_short_times_keeps_its_pace_on_timers_of_whole_milliseconds()
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        using var schedule = new ClockSchedule(new PlainClock(time, 1_000_000_000));
        var moments = new List<TimeSpan>();
        Noting? next = null;
        next = new Noting(_ =>
        {
            moments.Add(schedule.Now);
            schedule.At(schedule.Now + TimeSpan.FromMicroseconds(250), next!, 0);
        });
        schedule.At(TimeSpan.Zero, next, 0);
        time.Advance(TimeSpan.FromMilliseconds(100));
        Assert.InRange(moments.Count, 395, 401);
        Assert.All(moments.Index(), one => Assert.Equal(TimeSpan.FromMicroseconds(250) * one.Index, one.Item));
    }

    [Fact]
    public void A_timer_that_fires_too_soon_is_armed_again()
    {
        var time = new VirtualTime(DateTimeOffset.UnixEpoch);
        using var schedule = new ClockSchedule(new PlainClock(time, 1_000_000_000) { Haste = 0.5 });
        var at = TimeSpan.Zero;
        schedule.At(TimeSpan.FromMilliseconds(10), new Noting(_ => at = time.Now));
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.InRange(at, 10.Ms, 12.Ms);
    }

    /// <summary>Any clock but a schedule: stamps in units of its own, timers through <see cref="TimeProvider.CreateTimer"/> alone.</summary>
    private sealed class PlainClock(VirtualTime time, long frequency) : TimeProvider
    {
        /// <summary>What share of its due time a timer waits.</summary>
        public double Haste { get; init; } = 1;

        public override long TimestampFrequency => frequency;

        public override long GetTimestamp() => (long)((Int128)time.GetTimestamp() * frequency / TimeSpan.TicksPerSecond);

        public override DateTimeOffset GetUtcNow() => time.GetUtcNow();

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            new Hasty(time.CreateTimer(callback, state, dueTime, period), Haste);

        private sealed class Hasty(ITimer timer, double haste) : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) =>
                timer.Change(dueTime > TimeSpan.FromMilliseconds(1) ? dueTime * haste : dueTime, period);

            public void Dispose() => timer.Dispose();

            public ValueTask DisposeAsync() => timer.DisposeAsync();
        }
    }

    private sealed class Noting(Action<int> note) : IDue
    {
        public void Due(int what) => note(what);
    }
}
