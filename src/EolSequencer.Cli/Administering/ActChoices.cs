using System.CommandLine;
using EolSequencer.Cli.Commands;

namespace EolSequencer.Cli.Administering;

/// <summary>What every act wants to know.</summary>
/// <param name="By">Badge of who acts; null: not said.</param>
/// <param name="Second">Badge of the second person; null: not said, or not wanted.</param>
internal sealed record ActChoices(string Data, bool AsJson, string? By, string? Second);

/// <summary>The options of every act.</summary>
internal sealed class ActOptions
{
    public Option<string> Data { get; } = DataOption.Make();

    public Option<bool> Json { get; } = JsonOption.Make();

    public Option<string?> By { get; } = new("--by") { Description = $"The badge of who acts; the PIN or password is asked for, or stands in {Secrets.Own}.", HelpName = "BADGE" };

    public Option<string?> Second { get; } = new("--second") { Description = $"The badge of the second person; the PIN or password is asked for, or stands in {Secrets.Second}.", HelpName = "BADGE" };

    /// <summary>Adds them to a command in which somebody acts.</summary>
    public void AddTo(Command command)
    {
        command.Add(By);
        AddLookTo(command);
    }

    /// <summary>Adds them to a command that only looks.</summary>
    public void AddLookTo(Command command)
    {
        command.Add(Data);
        command.Add(Json);
    }

    public ActChoices Of(ParseResult parsed) => new(parsed.GetRequiredValue(Data), parsed.GetValue(Json), parsed.GetValue(By), parsed.CommandResult.Command.Options.Contains(Second) ? parsed.GetValue(Second) : null);
}
