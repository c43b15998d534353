using EolSequencer.Records;
using EolSequencer.Records.Administration;
using Spectre.Console;

namespace EolSequencer.Cli.Administering;

/// <summary>
/// A record that knows nobody gets its first administrator, from the environment or from the terminal. There is no person and no
/// password that comes with the program.
/// </summary>
internal sealed class FirstAdministrator(IAnsiConsole told, DataFolder folder, RecordAdministration administration)
{
    /// <summary>Badge and secret with a colon between, for a start without a terminal.</summary>
    public const string Variable = "EOL_ADMINISTRATOR";

    /// <summary>Makes the first administrator when nobody is known. Null: somebody is known now; else why not.</summary>
    public Refused? Make()
    {
        if (!folder.Record.People.List().IsEmpty) return null;
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
        {
            return given.Split(':', 2) is [var badge, var secret]
                ? Make(badge, badge, secret)
                : new Refused(Refusal.Malformed, $"{Variable} holds no colon; write BADGE:SECRET");
        }

        if (!Secrets.CanAsk) return new Refused(Refusal.Malformed, $"the record knows nobody yet: set {Variable} to BADGE:SECRET for the first administrator, or start in a terminal");
        told.WriteLine("The record knows nobody yet. Who is its first administrator?");
        var typedBadge = told.Prompt(new TextPrompt<string>("badge:"));
        var name = told.Prompt(new TextPrompt<string>("name:"));
        return new Secrets(told).AskNew(typedBadge) is { } typed ? Make(typedBadge, name, typed) : new Refused(Refusal.Malformed, "no administrator was made");
    }

    private Refused? Make(string badge, string name, string secret)
    {
        var made = administration.People.AddFirst(badge, name, secret);
        if (made.IsDone) told.MarkupLineInterpolated($"[grey]{made.Value.Badge} is the first administrator of this record[/]");
        return made.Refused;
    }
}
