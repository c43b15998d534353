using System.CommandLine;

namespace EolSequencer.Cli.Commands;

/// <summary>Output for programs.</summary>
internal static class JsonOption
{
    public static Option<bool> Make() => new("--json") { Description = "Writes JSON for a program to read." };
}
