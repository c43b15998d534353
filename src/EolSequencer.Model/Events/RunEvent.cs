namespace EolSequencer.Model.Events;

/// <summary>
/// Something that happened in a run. Events are the only thing results, reports and screens are made from. They are
/// immutable and numbered without a gap.
/// </summary>
public abstract record RunEvent
{
    private protected RunEvent() { }

    /// <summary>Number in the run, from 1.</summary>
    public required int N { get; init; }

    /// <summary>Monotonic time since the run began, in whole microseconds.</summary>
    public required long At { get; init; }
}
