using Spectre.Console;

namespace EolSequencer.Cli.Administering;

/// <summary>Where PINs and passwords come from: a variable of the environment, else a terminal that does not show them. Never the command line, which others see.</summary>
internal sealed class Secrets(IAnsiConsole told)
{
    /// <summary>PIN or password of who acts.</summary>
    public const string Own = "EOL_SECRET";

    /// <summary>PIN or password of the second person.</summary>
    public const string Second = "EOL_SECOND_SECRET";

    /// <summary>PIN or password that is to be set.</summary>
    public const string New = "EOL_NEW_SECRET";

    /// <summary>The secret; null when there is no variable and no terminal, which is told.</summary>
    public string? Ask(string variable, string whose)
    {
        if (Environment.GetEnvironmentVariable(variable) is { Length: > 0 } given) return given;
        if (!CanAsk)
        {
            told.MarkupLineInterpolated($"[red]error[/]: the PIN or password of {whose} is wanted: set {variable}, or type it in a terminal");
            return null;
        }

        return told.Prompt(new TextPrompt<string>($"PIN or password of {Markup.Escape(whose)}:").Secret(null));
    }

    /// <summary>A secret that is to be set, typed twice in a terminal.</summary>
    public string? AskNew(string badge)
    {
        if (Ask(New, $"{badge}, to be set") is not { } first) return null;
        if (Environment.GetEnvironmentVariable(New) is { Length: > 0 }) return first;
        if (told.Prompt(new TextPrompt<string>("once more:").Secret(null)) == first) return first;
        told.MarkupLineInterpolated($"[red]error[/]: the two are not the same; nothing was changed");
        return null;
    }

    /// <summary>Whether somebody sits at a terminal.</summary>
    public static bool CanAsk => !Console.IsInputRedirected && !Console.IsOutputRedirected;
}
