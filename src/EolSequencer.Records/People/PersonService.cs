using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>Who may do what. Every change is an act of an administrator; one of them is always left.</summary>
public sealed class PersonService
{
    private readonly Desk _desk;

    internal PersonService(Desk desk) => _desk = desk;

    /// <summary>Makes the first administrator; refused once somebody is known.</summary>
    public Outcome<Person> AddFirst(string badge, string name, string secret)
    {
        const string What = "make the first administrator";
        if (Fault(badge, name, secret) is { } fault) return _desk.Refuse(What, badge, fault);
        var hash = SecretHasher.Hash(badge, secret);
        return _desk.Change<Person>(What, badge, turn => turn.People.All().Count > 0
            ? Refused.AgainstRule("somebody is known already; an administrator adds others")
            : Add(turn, badge, badge, name, [Role.Administrator], hash));
    }

    /// <summary>Adds a person.</summary>
    public Outcome<Person> Add(SignedIn by, string badge, string name, ImmutableArray<Role> roles, string secret)
    {
        var fault = Fault(badge, name, secret) ?? NoRoles(roles);
        var hash = fault is null ? SecretHasher.Hash(badge, secret) : "";
        return _desk.Change<Person>("add person", by, [Role.Administrator], fault, turn => turn.People.Find(badge) is not null
            ? Refused.AgainstRule($"the badge '{badge}' is somebody's already; a badge is never given again")
            : Add(turn, by.Badge, badge, name, roles, hash));
    }

    /// <summary>Sets what a person may do.</summary>
    public Outcome<Person> SetRoles(SignedIn by, string badge, ImmutableArray<Role> roles) =>
        Change("set roles", by, badge, NoRoles(roles), (turn, person) => person with { Roles = [.. WordsOf(roles)] } is var changed && LeavesNobody(turn, changed) is { } nobody
            ? nobody
            : Done(turn, new PersonRolesSet(badge, changed.Roles), by));

    /// <summary>A person may not sign in any more; what they did stays theirs.</summary>
    public Outcome<Person> Disable(SignedIn by, string badge, string reason) =>
        Change("disable person", by, badge, TextRules.Text("reason", reason), (turn, person) => LeavesNobody(turn, person with { Disabled = reason }) is { } nobody
            ? nobody
            : Done(turn, new PersonDisabled(badge, reason), by));

    /// <summary>A person may sign in again; a locked badge is free.</summary>
    public Outcome<Person> Enable(SignedIn by, string badge, string reason) =>
        Change("enable person", by, badge, TextRules.Text("reason", reason), (turn, _) => Done(turn, new PersonEnabled(badge, reason), by));

    /// <summary>Sets a PIN or password: one's own, or as an administrator anybody's.</summary>
    public Outcome<Person> SetSecret(SignedIn by, string badge, string secret)
    {
        var fault = TextRules.Id("badge", badge) ?? SecretRules.Check(badge, secret);
        var hash = fault is null ? SecretHasher.Hash(badge, secret) : "";
        ReadOnlySpan<Role> roles = by.Badge == badge ? Enum.GetValues<Role>() : [Role.Administrator];
        return _desk.Change("set the PIN or password of another", by, roles, fault, turn =>
        {
            if (turn.People.Find(badge) is null) return Nobody(badge);
            turn.KeepSecretHash(badge, hash);
            return Done(turn, new PersonSecretSet(badge, SecretHasher.FingerprintOf(hash)), by);
        });
    }

    private Outcome<Person> Change(string what, SignedIn by, string badge, Refused? fault, Func<IActTurn, PersonRow, Outcome<Person>> decide) =>
        _desk.Change(what, by, [Role.Administrator], TextRules.Id("badge", badge) ?? fault, turn =>
            turn.People.Find(badge) is { } person ? decide(turn, person) : Nobody(badge));

    private static Outcome<Person> Add(IActTurn turn, string by, string badge, string name, ImmutableArray<Role> roles, string hash)
    {
        turn.KeepSecretHash(badge, hash);
        turn.Append(new PersonAdded(badge, name, [.. WordsOf(roles)], SecretHasher.FingerprintOf(hash)), by);
        return Person.Of(turn.People.Find(badge)!);
    }

    private static Outcome<Person> Done(IActTurn turn, Act act, SignedIn by)
    {
        turn.Append(act, by.Badge);
        var badge = act switch
        {
            PersonRolesSet set => set.Badge,
            PersonDisabled disabled => disabled.Badge,
            PersonEnabled enabled => enabled.Badge,
            PersonSecretSet set => set.Badge,
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "no act about a person who is known"),
        };
        return Person.Of(turn.People.Find(badge)!);
    }

    private static Refused? LeavesNobody(IActTurn turn, PersonRow changed) => turn.People.All().Any(one => IsAdministrator(one.Badge == changed.Badge ? changed : one))
        ? null
        : Refused.AgainstRule($"'{changed.Badge}' is the last administrator; make another one first");

    private static bool IsAdministrator(PersonRow person) => person.Disabled is null && person.Roles.Contains(Role.Administrator.Word());

    private static Outcome<Person> Nobody(string badge) => Refused.Unknown($"nobody has the badge '{badge}'; 'eol person list' shows everybody");

    private static Refused? Fault(string badge, string name, string secret) =>
        TextRules.Id("badge", badge) ?? TextRules.Name("name", name) ?? SecretRules.Check(badge, secret);

    private static Refused? NoRoles(ImmutableArray<Role> roles) => roles.IsEmpty ? Refused.Malformed($"a person has one role at least: {Roles.Words}") : null;

    private static IEnumerable<string> WordsOf(ImmutableArray<Role> roles) => roles.Distinct().Order().Select(role => role.Word());
}
