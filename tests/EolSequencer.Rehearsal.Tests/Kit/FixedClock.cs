namespace EolSequencer.Rehearsal.Tests.Kit;

/// <summary>A clock that stands.</summary>
internal sealed class FixedClock(DateTimeOffset now) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => now;
}
