using System.Collections.Immutable;

namespace EolSequencer.Wire.TextLines;

/// <summary>
/// Where a device's text begins and ends: <c>[start] body [checksum] [end] [checksum]</c>. Either the end or the length of
/// the body tells where it ends.
/// </summary>
public sealed record TextFraming
{
    /// <summary>The longest body that is waited for; what comes without an end is not kept for ever.</summary>
    public const int LongestBody = 65_536;

    /// <summary>What stands in front of each text, such as STX; empty: nothing.</summary>
    public ImmutableArray<byte> Start { get; init; } = [];

    /// <summary>What ends it; empty only with a <see cref="Length"/>.</summary>
    public ImmutableArray<byte> End { get; init; } = LineEnd.CrLf;

    /// <summary>Bytes of the body; null: up to the end.</summary>
    public int? Length { get; init; }

    /// <summary>Its checksum; null: none.</summary>
    public TextChecksum? Checksum { get; init; }

    /// <summary>What is wrong with it for people to correct; null: nothing.</summary>
    public string? Fault => this switch
    {
        { Length: null, End.IsEmpty: true } => "a text needs an end or a length",
        { Length: < 1 or > LongestBody } => $"a text has between 1 and {LongestBody} bytes",
        { Length: null, Checksum: { IsDigits: false, IsBehindEnd: false } } => "a checksum in bytes before the end can look like the end; give it a length, or let it stand in digits or behind the end",
        _ => null,
    };

    /// <summary>The bytes of a text, ready to be sent.</summary>
    /// <param name="body">Without start, end and checksum.</param>
    public byte[] Make(ReadOnlySpan<byte> body)
    {
        var sum = Checksum?.Make(this, body) ?? [];
        return Checksum is { IsBehindEnd: true }
            ? [.. Start, .. body, .. End, .. sum]
            : [.. Start, .. body, .. sum, .. End];
    }
}
