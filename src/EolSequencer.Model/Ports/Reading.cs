using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Ports;

/// <summary>
/// One reading, or why there is none. For an action without a returned value, a confirmation has neither value nor
/// cause.
/// </summary>
public readonly record struct Reading
{
    /// <summary>The value; null when it is missing or there was nothing to return.</summary>
    public Value? Value { get; init; }

    /// <summary>Why there is no value; null when there is one.</summary>
    public MissingCause? Missing { get; init; }

    /// <summary>When the adapter received it: a timestamp of the injected clock.</summary>
    public required long Stamp { get; init; }

    /// <summary>The bytes it was made from; empty when there are none.</summary>
    public ReadOnlyMemory<byte> Raw { get; init; }

    /// <summary>What was sent and received, for people; null when all went well.</summary>
    public string? Detail { get; init; }

    /// <summary>A reading with a value.</summary>
    public static Reading Of(Value value, long stamp, ReadOnlyMemory<byte> raw = default) =>
        new() { Value = value, Stamp = stamp, Raw = raw };

    /// <summary>A confirmation without a value.</summary>
    public static Reading Confirmed(long stamp, ReadOnlyMemory<byte> raw = default) => new() { Stamp = stamp, Raw = raw };

    /// <summary>No reading.</summary>
    public static Reading None(MissingCause cause, long stamp, string detail, ReadOnlyMemory<byte> raw = default) =>
        new() { Missing = cause, Stamp = stamp, Detail = detail, Raw = raw };
}
