using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>A person became known.</summary>
/// <param name="Secret">SHA-256 over the salted hash that is kept beside: shows that it was not replaced, and nothing of the secret.</param>
internal sealed record PersonAdded(string Badge, string Name, ImmutableArray<string> Roles, string Secret) : Act;

/// <summary>What a person may do was set anew.</summary>
internal sealed record PersonRolesSet(string Badge, ImmutableArray<string> Roles) : Act;

/// <summary>A person may not sign in any more.</summary>
internal sealed record PersonDisabled(string Badge, string Reason) : Act;

/// <summary>A person may sign in again; failed attempts are forgotten.</summary>
internal sealed record PersonEnabled(string Badge, string Reason) : Act;

/// <summary>A person has a new PIN or password; failed attempts are forgotten.</summary>
/// <param name="Secret">As in <see cref="PersonAdded"/>.</param>
internal sealed record PersonSecretSet(string Badge, string Secret) : Act;

/// <summary>Somebody gave a wrong PIN or password for a badge.</summary>
/// <param name="LockedUntil">UTC; until then no attempt is taken. Null: more attempts are allowed.</param>
internal sealed record SignInRefused(string Badge, string? LockedUntil = null) : Act;

/// <summary>A person signed in after failed attempts; they are forgotten.</summary>
internal sealed record SignInCleared(string Badge) : Act;
