using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>Whether a person who signed in may do something, as the record stands now.</summary>
internal static class Rights
{
    /// <summary>What they lack; null when nothing.</summary>
    public static Refused? Miss(IActTables tables, SignedIn by, string what, params ReadOnlySpan<Role> roles)
    {
        if (tables.People.Find(by.Badge) is not { } person) return Refused.NotAllowed($"nobody has the badge '{by.Badge}' any more");
        if (person.Disabled is not null) return Refused.NotAllowed($"'{by.Badge}' may not act: {person.Disabled}");
        foreach (var role in roles)
        {
            if (person.Roles.Contains(role.Word())) return null;
        }

        var wanted = string.Join(" or ", roles.ToArray().Select(role => role.Word()));
        return Refused.NotAllowed($"{what} wants the role {wanted}; {person.Name} has {string.Join(", ", person.Roles)}");
    }
}
