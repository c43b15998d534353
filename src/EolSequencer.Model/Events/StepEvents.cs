using System.Collections.Immutable;

namespace EolSequencer.Model.Events;

/// <summary>A step that acts has begun; written so that a crash is known to have left it half done.</summary>
public sealed record Begun : RunEvent
{
    public required string Step { get; init; }
    public required int Attempt { get; init; }
}

/// <summary>A step was not needed: its <c>only-if</c> was false at its turn.</summary>
public sealed record NotNeeded : RunEvent
{
    public required string Step { get; init; }
}

/// <summary>A person with that right passed over a step.</summary>
public sealed record PassedOver : RunEvent
{
    public required string Step { get; init; }
    public required string Reason { get; init; }
    public string? Person { get; init; }
}

/// <summary>The stamped raw readings of a <c>sample</c> or <c>capture</c>; the record keeps them beside the events under their hash.</summary>
public sealed record SeriesRecorded : RunEvent
{
    public required string Step { get; init; }
    public required string Channel { get; init; }
    public required ImmutableArray<SeriesPoint> Points { get; init; }

    /// <summary>What a <c>capture</c> adds; null for a <c>sample</c>.</summary>
    public CaptureSpan? Capture { get; init; }
}

/// <summary>From when to when a group was captured; <see cref="SeriesRecorded.Step"/> is then the group's id.</summary>
/// <param name="From">Microseconds since the run began; moments of the trace count from here.</param>
/// <param name="Length">How long it lasted, in microseconds.</param>
/// <param name="Lost">Why continuity was lost, the first cause; null when it was kept.</param>
public sealed record CaptureSpan(long From, long Length, string? Lost);

/// <summary>One reading of a series.</summary>
/// <param name="At">Reception, microseconds since the run began.</param>
/// <param name="Value">Exact decimal text, text or yes/no; null when it was missing.</param>
/// <param name="Raw">Its bytes as hex; null when there are none.</param>
public readonly record struct SeriesPoint(long At, string? Value, string? Raw);

/// <summary>The link of a device broke, with its first cause.</summary>
public sealed record DeviceLost : RunEvent
{
    public required string Role { get; init; }
    public required string Cause { get; init; }
}

/// <summary>The link of a device is back.</summary>
public sealed record DeviceBack : RunEvent
{
    public required string Role { get; init; }
}

/// <summary>The run was told to stop; what follows is <c>always</c>.</summary>
public sealed record Stopped : RunEvent
{
    /// <summary>The step that stopped it; null when a person or the program did.</summary>
    public string? Step { get; init; }
    public required string Reason { get; init; }
    public string? Person { get; init; }
}
