using EolSequencer.Simulators.Time;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>Virtual time whose wall clock somebody sets while it runs; its timestamps go on as if nothing were.</summary>
internal sealed class JumpingClock(VirtualTime inner, params (double AtSeconds, double BySeconds)[] jumps) : TimeProvider
{
    public override long TimestampFrequency => inner.TimestampFrequency;

    public override long GetTimestamp() => inner.GetTimestamp();

    public override DateTimeOffset GetUtcNow() =>
        inner.GetUtcNow() + TimeSpan.FromSeconds(jumps.Where(jump => inner.Now.TotalSeconds >= jump.AtSeconds).Sum(jump => jump.BySeconds));

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => inner.CreateTimer(callback, state, dueTime, period);
}
