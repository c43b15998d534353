namespace EolSequencer.Model.Events;

/// <summary>
/// A run that had broken off, with its process or its computer, is taken up again by another process. Its time goes on: what
/// passed in between is wall time.
/// </summary>
public sealed record Resumed : RunEvent
{
    /// <summary>What follows.</summary>
    public required ResumedFor For { get; init; }

    /// <summary>Wall time, UTC.</summary>
    public required DateTimeOffset Wall { get; init; }

    /// <summary>Who identified the vehicle again; null when nobody did, or nobody is known.</summary>
    public string? Person { get; init; }
}

/// <summary>What a run is taken up for.</summary>
public enum ResumedFor
{
    /// <summary>To leave the vehicle safe; the station does it by itself.</summary>
    Safety,

    /// <summary>To go on with its steps; the vehicle has been identified again.</summary>
    Steps,

    /// <summary>To be ended as interrupted; it does not go on.</summary>
    End,
}
