using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;
using Microsoft.AspNetCore.Identity;

namespace EolSequencer.Records.People;

/// <summary>Badge and PIN or password. Too many wrong ones lock the badge for a while, whoever tried.</summary>
public sealed class SignIn
{
    private const string What = "sign in";

    /// <summary>How many wrong secrets lock a badge, and for how long: as ASP.NET Core Identity has it, 5 and 5 minutes.</summary>
    private static readonly LockoutOptions Lockout = new();

    private readonly Desk _desk;
    private readonly TimeProvider _time;

    internal SignIn(Desk desk, TimeProvider time) => (_desk, _time) = (desk, time);

    /// <summary>Signs a person in.</summary>
    public Outcome<SignedIn> With(string badge, string secret)
    {
        // What cannot be a badge or secret is not worth a hash, and must not make one slow. A badge that nobody has is not noted: a
        // PIN typed into the wrong field would stand in the log.
        if (TextRules.Id("badge", badge) is not null || secret.Length > SecretRules.Longest) return _desk.Refuse(What, null, Wrong());
        var (person, hash) = _desk.Read(view => (view.People.Find(badge), view.SecretHash(badge)));
        if (person is not null && Locked(person) is { } locked) return _desk.Refuse(What, badge, locked);

        // Outside of any turn: it takes as long as many steps, and stations wait for a turn.
        var fits = SecretHasher.Fits(badge, hash, secret);
        if (person is null) return _desk.Refuse(What, null, Wrong());
        if (fits && person is { Failures: 0, LockedUntil: null, Disabled: null }) return new SignedIn(badge, person.Name);
        var decided = _desk.Change<Decision>(What, badge, turn => Decide(turn, badge, fits, hash));
        if (!decided.IsDone) return decided.Refused;
        return decided.Value.Refusal is { } why ? _desk.Refuse(What, badge, why) : new SignedIn(badge, person.Name);
    }

    private Outcome<Decision> Decide(IActTurn turn, string badge, bool fits, string? hash)
    {
        // Others may have tried, or changed the secret, meanwhile.
        if (turn.People.Find(badge) is not { } person || turn.SecretHash(badge) != hash) return new Decision(Wrong());
        if (Locked(person) is { } locked) return new Decision(locked);
        if (!fits)
        {
            var locks = person.Failures + 1 >= Lockout.MaxFailedAccessAttempts;
            turn.Append(new SignInRefused(badge, locks ? UtcText.Of(turn.Now + Lockout.DefaultLockoutTimeSpan) : null), null);
            return new Decision(Wrong());
        }

        if (person.Disabled is { } disabled) return new Decision(Refused.NotAllowed($"'{badge}' may not sign in: {disabled}"));
        turn.Append(new SignInCleared(badge), badge);
        return new Decision(null);
    }

    private Refused? Locked(PersonRow person) => person.LockedUntil is { } until && UtcText.Read(until) > _time.GetUtcNow()
        ? Refused.NotAllowed($"'{person.Badge}' is locked until {until} after {Lockout.MaxFailedAccessAttempts} wrong attempts; wait, or have an administrator enable it")
        : null;

    // The same words whether there is such a badge or not.
    private static Refused Wrong() => Refused.NotAllowed("badge and PIN or password do not fit");

    /// <summary>A turn that is kept although nobody is signed in: the failed attempt counts.</summary>
    private sealed record Decision(Refused? Refusal);
}
