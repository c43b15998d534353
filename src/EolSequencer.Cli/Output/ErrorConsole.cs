using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>Where people are told something while the output belongs to a program.</summary>
internal static class ErrorConsole
{
    public static IAnsiConsole Make()
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) });
        if (!console.Profile.Out.IsTerminal) console.Profile.Width = 1000; // Only messages go here; in a file each stays on its line.
        return console;
    }
}
