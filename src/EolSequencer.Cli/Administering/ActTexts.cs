using System.CommandLine;

namespace EolSequencer.Cli.Administering;

/// <summary>Options that several acts have.</summary>
internal static class ActTexts
{
    public static Option<string> Text(string name, string description) => new(name) { Description = description, HelpName = "TEXT", Required = true };

    public static Option<string> Reason() => Text("--reason", "Why, for the record.");

    public static Argument<string> Vin() => new("VIN") { Description = "The vehicle's identification number." };

    public static Argument<string> Nonconformity() => new("ID") { Description = "The nonconformity, such as nc-000001." };
}
