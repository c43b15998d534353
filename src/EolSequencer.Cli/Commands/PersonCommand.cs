using System.Collections.Immutable;
using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol person</c>: who may do what at the stations of a record.</summary>
internal static class PersonCommand
{
    public static Command Make(IAnsiConsole console) => new("person", "Who may do what: badges, PINs and roles.")
    {
        List(console), Add(console), SetRoles(console), Disable(console), Enable(console), SetSecret(console),
    };

    private static Command List(IAnsiConsole console)
    {
        var options = new ActOptions();
        var command = new Command("list", "Everybody the record knows.");
        options.AddLookTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Look(record =>
        {
            var people = record.People.List();
            if (parsed.GetValue(options.Json)) JsonOutput.Write(console, people.Select(Json));
            else Write(console, people);
            return ExitCode.Pass;
        }));
        return command;
    }

    private static Command Add(IAnsiConsole console)
    {
        var name = new Option<string>("--name") { Description = "The person's name.", HelpName = "NAME", Required = true };
        var roles = RoleOption();
        return Act(console, "add", $"Adds a person; the new PIN or password is asked for, or stands in {Secrets.New}.", [name, roles], (parsed, administration, by, badge) =>
            RolesOf(parsed.GetRequiredValue(roles), out var wanted) is { } wrong ? wrong
            : NewSecret(console, badge) is not { } secret ? NoSecret
            : administration.People.Add(by, badge, parsed.GetRequiredValue(name), wanted, secret));
    }

    private static Command SetRoles(IAnsiConsole console)
    {
        var roles = RoleOption();
        return Act(console, "role", "Sets what a person may do.", [roles], (parsed, administration, by, badge) =>
            RolesOf(parsed.GetRequiredValue(roles), out var wanted) is { } wrong ? wrong : administration.People.SetRoles(by, badge, wanted));
    }

    private static Command Disable(IAnsiConsole console)
    {
        var reason = ActTexts.Reason();
        return Act(console, "disable", "Lets a person sign in no more; what they did stays theirs.", [reason], (parsed, administration, by, badge) =>
            administration.People.Disable(by, badge, parsed.GetRequiredValue(reason)));
    }

    private static Command Enable(IAnsiConsole console)
    {
        var reason = ActTexts.Reason();
        return Act(console, "enable", "Lets a person sign in again, and frees a locked badge.", [reason], (parsed, administration, by, badge) =>
            administration.People.Enable(by, badge, parsed.GetRequiredValue(reason)));
    }

    private static Command SetSecret(IAnsiConsole console) =>
        Act(console, "pin", $"Sets a PIN or password: one's own, or as an administrator anybody's. It is asked for, or stands in {Secrets.New}.", [], (_, administration, by, badge) =>
            NewSecret(console, badge) is { } secret ? administration.People.SetSecret(by, badge, secret) : NoSecret);

    private static Command Act(
        IAnsiConsole console, string verb, string description, ImmutableArray<Option> more, Func<ParseResult, RecordAdministration, SignedIn, string, Outcome<Person>> act)
    {
        var badge = new Argument<string>("BADGE") { Description = "The person's badge, as it is scanned." };
        var options = new ActOptions();
        var command = new Command(verb, description) { badge };
        foreach (var option in more) command.Add(option);
        options.AddTo(command);
        command.SetAction(parsed => new ActSession(console, options.Of(parsed)).Run(
            (administration, by) => act(parsed, administration, by, parsed.GetRequiredValue(badge)),
            person => (Line(person), Json(person))));
        return command;
    }

    private static Option<string[]> RoleOption() => new("--role")
    {
        Description = $"What the person may do: {Roles.Words}.",
        HelpName = "ROLE",
        Required = true,
        AllowMultipleArgumentsPerToken = true,
    };

    private static Refused NoSecret { get; } = new(Refusal.Malformed, "nothing was changed");

    private static string? NewSecret(IAnsiConsole console, string badge) => new Secrets(console.Profile.Out.IsTerminal ? console : ErrorConsole.Make()).AskNew(badge);

    private static Refused? RolesOf(string[] words, out ImmutableArray<Role> roles)
    {
        roles = [.. words.Select(Roles.Find).OfType<Role>()];
        return words.FirstOrDefault(word => Roles.Find(word) is null) is { } wrong ? new Refused(Refusal.Malformed, $"'{wrong}' is no role; there are {Roles.Words}") : null;
    }

    private static string State(Person person) => person switch
    {
        { Disabled: { } why } => $"disabled: {why}",
        { LockedUntil: { } until } when person.IsLocked(TimeProvider.System.GetUtcNow()) => $"locked until {until:yyyy-MM-dd HH:mm:ss} UTC",
        _ => "may sign in",
    };

    private static string Line(Person person) => $"{person.Badge} ({person.Name}): {string.Join(", ", person.Roles.Select(role => role.Word()))}; {State(person)}";

    private static object Json(Person person) => new
    {
        badge = person.Badge,
        name = person.Name,
        roles = person.Roles.Select(role => role.Word()),
        disabled = person.Disabled,
        lockedUntil = person.LockedUntil?.UtcDateTime,
    };

    private static void Write(IAnsiConsole console, ImmutableArray<Person> people)
    {
        if (people.IsEmpty)
        {
            console.WriteLine("the record knows nobody yet; the first 'eol person add' makes its administrator");
            return;
        }

        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("badge", "name", "roles", "state");
        foreach (var person in people) table.AddRow(new Text(person.Badge), new Text(person.Name), new Text(string.Join(", ", person.Roles.Select(role => role.Word()))), new Text(State(person)));
        console.Write(table);
    }
}
