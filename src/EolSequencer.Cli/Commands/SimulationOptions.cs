using System.Collections.Immutable;
using System.CommandLine;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Cli.Commands;

/// <summary>What a simulated vehicle is like.</summary>
internal static class SimulationOptions
{
    public static Option<ulong> Seed() => new("--seed") { Description = "Fixes all that a simulation leaves to chance.", HelpName = "N", DefaultValueFactory = _ => 1 };

    public static Option<string[]> Inject() => new("--inject")
    {
        Description = "A fault of the simulated vehicle, NAME, NAME=VALUE or NAME@TIME; may be given again.",
        HelpName = "FAULT",
        DefaultValueFactory = _ => [],
        AllowMultipleArgumentsPerToken = true,
    };

    /// <summary>The faults that were typed.</summary>
    /// <returns>What is wrong with the first that is none; null when all are right.</returns>
    public static string? Faults(IEnumerable<string> typed, out ImmutableArray<InjectedFault> faults)
    {
        var found = ImmutableArray.CreateBuilder<InjectedFault>();
        string? wrong = null;
        foreach (var text in typed)
        {
            var parsed = FaultText.Parse(text);
            if (parsed.IsRight) found.Add(parsed.Fault);
            else wrong ??= $"--inject {text}: {parsed.Why}; simulators/README.md lists them all";
        }

        faults = found.DrainToImmutable();
        return wrong;
    }
}
