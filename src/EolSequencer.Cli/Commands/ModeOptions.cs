using System.CommandLine;
using EolSequencer.Model.Events;

namespace EolSequencer.Cli.Commands;

/// <summary><c>--rehearsals</c> and <c>--checks</c>: other runs than those that count for vehicles.</summary>
/// <param name="rehearsals">What the first does.</param>
/// <param name="checks">What the second does.</param>
internal sealed class ModeOptions(string rehearsals, string checks)
{
    public Option<bool> Rehearsals { get; } = new("--rehearsals") { Description = rehearsals };

    public Option<bool> Checks { get; } = new("--checks") { Description = checks };

    /// <summary>The runs that are wanted.</summary>
    public RunMode Of(ParseResult parsed) =>
        parsed.GetValue(Rehearsals) ? RunMode.Rehearsal : parsed.GetValue(Checks) ? RunMode.Check : RunMode.Production;
}
