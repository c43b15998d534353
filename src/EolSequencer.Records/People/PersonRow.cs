using System.Collections.Immutable;

namespace EolSequencer.Records.People;

/// <summary>A person as the acts have left them.</summary>
/// <param name="Secret">SHA-256 over the salted hash that is kept beside.</param>
/// <param name="Failures">Wrong secrets since the last right one, or since the last time the badge was locked.</param>
/// <param name="LockedUntil">UTC; null when it is not locked.</param>
/// <param name="Disabled">Why the person may not sign in; null when they may.</param>
internal sealed record PersonRow(
    string Badge, string Name, ImmutableArray<string> Roles, string Secret, int Failures = 0, string? LockedUntil = null, string? Disabled = null);
