namespace EolSequencer.Model.Plants;

/// <summary>
/// What a plan counts for what a person or a device does, where neither a step nor its window of time says more. The usual
/// values are those of a practised person who stands where the step is done.
/// </summary>
public sealed record PlannedTimes
{
    /// <summary>An <c>ask</c> whose end a device sees.</summary>
    public TimeSpan Ask { get; init; } = TimeSpan.FromSeconds(4);

    /// <summary>An <c>ask</c> that a person confirms.</summary>
    public TimeSpan Confirm { get; init; } = TimeSpan.FromSeconds(3);

    public TimeSpan Judge { get; init; } = TimeSpan.FromSeconds(3);

    public TimeSpan Enter { get; init; } = TimeSpan.FromSeconds(6);

    public TimeSpan Scan { get; init; } = TimeSpan.FromSeconds(3);

    public TimeSpan Choose { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Reading and acknowledging a caution.</summary>
    public TimeSpan Caution { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>Waiting for a condition that says nothing of its time.</summary>
    public TimeSpan Await { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>One exchange with a device: a read, a set, a do.</summary>
    public TimeSpan Exchange { get; init; } = TimeSpan.FromMilliseconds(50);
}
