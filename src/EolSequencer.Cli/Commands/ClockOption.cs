using System.CommandLine;

namespace EolSequencer.Cli.Commands;

/// <summary>How time goes for a simulated vehicle.</summary>
internal static class ClockOption
{
    public const string Real = "real";

    public static Option<string> Make()
    {
        var clock = new Option<string>("--clock") { Description = "Real time, or virtual time that jumps to what is due next.", DefaultValueFactory = _ => "virtual" };
        clock.AcceptOnlyFromAmong(Real, "virtual");
        return clock;
    }
}
