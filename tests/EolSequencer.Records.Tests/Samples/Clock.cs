namespace EolSequencer.Records.Tests.Samples;

/// <summary>Wall time that a test moves.</summary>
internal sealed class Clock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 11, 3, 6, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}
