using System.CommandLine;

namespace EolSequencer.Cli.Commands;

/// <summary>The folder of the record.</summary>
internal static class DataOption
{
    /// <summary>Where commands look that are given no folder and no station file that names one.</summary>
    public const string Usual = "eol-data";

    public static Option<string> Make() => new("--data")
    {
        Description = "The data folder that holds the record.",
        HelpName = "DIR",
        DefaultValueFactory = _ => Usual,
    };
}
