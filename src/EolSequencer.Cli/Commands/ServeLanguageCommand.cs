using System.CommandLine;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol serve-language</c>: what an editor starts to be told of faults and helped while somebody writes.</summary>
internal static class ServeLanguageCommand
{
    public static Command Make()
    {
        var command = new Command("serve-language", "Serves an editor by the Language Server Protocol over standard input and output.");
        command.SetAction((_, _) => LanguageServer.Server.Run(Console.OpenStandardInput(), Console.OpenStandardOutput(), TimeProvider.System, Console.Error.WriteLine));
        return command;
    }
}
