namespace EolSequencer.Station.Checking;

/// <summary>What was found of one role of a station.</summary>
/// <param name="Adapter">What serves it; null when the station binds nothing to it.</param>
/// <param name="Fault">The first thing that is wrong, with what was sent and received; null when all is well.</param>
public sealed record CheckedRole(string Role, string Kind, string? Adapter, string? Fault)
{
    /// <summary>Whether the device opened.</summary>
    public bool IsOpen { get; init; }

    /// <summary>What the equipment says it is; null when it did not.</summary>
    public string? Identity { get; init; }

    /// <summary>The channel that was read, with its index; null when the device kind has none that can be read at any time.</summary>
    public string? Channel { get; init; }

    /// <summary>What it gave; null when nothing.</summary>
    public string? Value { get; init; }

    /// <summary>How long that read took; null when there was none.</summary>
    public TimeSpan? Took { get; init; }

    public bool IsWell => Fault is null;
}
