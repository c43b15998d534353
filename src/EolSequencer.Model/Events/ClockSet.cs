namespace EolSequencer.Model.Events;

/// <summary>The wall clock was set while the run went on. Times within the run are by the monotonic clock and do not change.</summary>
public sealed record ClockSet : RunEvent
{
    /// <summary>Wall time that it would be, UTC.</summary>
    public required DateTimeOffset Before { get; init; }

    /// <summary>Wall time that it is now, UTC.</summary>
    public required DateTimeOffset After { get; init; }
}
