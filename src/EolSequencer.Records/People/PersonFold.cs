using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>What an act makes of a person.</summary>
internal static class PersonFold
{
    public static void Apply(Act act, IRows<PersonRow> people)
    {
        switch (act)
        {
            case PersonAdded added:
                people.Put(added.Badge, new PersonRow(added.Badge, added.Name, added.Roles, added.Secret));
                break;
            case PersonRolesSet set:
                Change(people, set.Badge, person => person with { Roles = set.Roles });
                break;
            case PersonDisabled disabled:
                Change(people, disabled.Badge, person => person with { Disabled = disabled.Reason });
                break;
            case PersonEnabled enabled:
                Change(people, enabled.Badge, person => person with { Disabled = null, Failures = 0, LockedUntil = null });
                break;
            case PersonSecretSet set:
                Change(people, set.Badge, person => person with { Secret = set.Secret, Failures = 0, LockedUntil = null });
                break;
            case SignInRefused refused:
                // A locked badge begins to count anew, as in ASP.NET Core Identity.
                Change(people, refused.Badge, person => refused.LockedUntil is { } until
                    ? person with { Failures = 0, LockedUntil = until }
                    : person with { Failures = person.Failures + 1 });
                break;
            case SignInCleared cleared:
                Change(people, cleared.Badge, person => person with { Failures = 0, LockedUntil = null });
                break;
        }
    }

    private static void Change(IRows<PersonRow> people, string badge, Func<PersonRow, PersonRow> change)
    {
        // Acts about somebody unknown can only stand in a record that was tampered with; the walk goes on and finds the difference.
        if (people.Find(badge) is { } person) people.Put(badge, change(person));
    }
}
