using System.Collections.Immutable;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.People;

/// <summary>A person as others may see them.</summary>
/// <param name="Badge">What the badge says when it is scanned; unique, capitals count.</param>
/// <param name="Disabled">Why the person may not sign in; null when they may.</param>
/// <param name="LockedUntil">Set by too many wrong PINs or passwords, may be over; null when there were none since.</param>
public sealed record Person(string Badge, string Name, ImmutableArray<Role> Roles, string? Disabled, DateTimeOffset? LockedUntil)
{
    /// <summary>Whether the badge is locked at a moment.</summary>
    public bool IsLocked(DateTimeOffset now) => LockedUntil > now;

    internal static Person Of(PersonRow row) => new(
        row.Badge,
        row.Name,
        [.. row.Roles.Select(word => Records.People.Roles.Find(word) ?? throw new FormatException($"'{word}' is no role"))],
        row.Disabled,
        row.LockedUntil is { } until ? UtcText.Read(until) : null);
}
