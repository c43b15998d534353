using System.CommandLine;

namespace EolSequencer.Cli.Commands;

/// <summary>The language of texts that authors wrote; a text that lacks it is shown in the first it has.</summary>
internal static class LanguageOption
{
    public const string Default = "en";

    public static Option<string> Make(string description) => new("--language") { Description = description, HelpName = "CODE", DefaultValueFactory = _ => Default };
}
