namespace EolSequencer.Simulators.Time;

/// <summary>Virtual time cannot go on: the work waits for something that will never happen.</summary>
/// <param name="at">Virtual time since the start.</param>
/// <param name="why">What stands still, for people.</param>
public sealed class VirtualDeadlock(TimeSpan at, string why)
    : InvalidOperationException($"virtual time stands still at {at:c}: {why}")
{
    /// <summary>Virtual time since the start.</summary>
    public TimeSpan At { get; } = at;
}
