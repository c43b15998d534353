using EolSequencer.Model.Judging;
using EolSequencer.Records;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Messages and exit codes of what could not be begun.</summary>
internal static class Refusals
{
    /// <summary>A document or the command line is wrong.</summary>
    public static int Document(IAnsiConsole console, string text)
    {
        console.MarkupLineInterpolated($"[red]error[/]: {text}");
        return ExitCode.Document;
    }

    /// <summary>The equipment is not there.</summary>
    public static int Equipment(IAnsiConsole console, string text)
    {
        console.MarkupLineInterpolated($"[magenta]error[/]: {text}");
        return ExitCode.Error;
    }

    /// <summary>A data folder did not open: one that is not there is a slip of the command line, all else is equipment.</summary>
    public static int Folder<TFolder>(IAnsiConsole console, FolderResult<TFolder> result)
    {
        var refused = (FolderResult<TFolder>.Refused)result;
        return refused.Trouble is FolderTrouble.NotThere or FolderTrouble.NotAFolder
            ? Document(console, refused.Why)
            : Equipment(console, refused.Why);
    }
}
