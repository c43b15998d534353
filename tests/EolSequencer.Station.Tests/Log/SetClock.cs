namespace EolSequencer.Station.Tests.Log;

/// <summary>A clock that stands where it was set.</summary>
internal sealed class SetClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 23, 59, 58, 250, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now.ToUniversalTime();
}
