using EolSequencer.Devices.Adapters;

namespace EolSequencer.Cli.Commands;

/// <summary>What was typed behind <c>eol run</c>.</summary>
internal sealed record RunChoices
{
    /// <summary>Null: the sequence in force.</summary>
    public required string? Sequence { get; init; }
    public required string Station { get; init; }
    public required string? Order { get; init; }
    public required string? Vin { get; init; }
    public required IReadOnlyList<string> Operator { get; init; }
    public required bool IsReal { get; init; }
    public required ulong Seed { get; init; }
    public required IReadOnlyList<string> Faults { get; init; }
    public required IReadOnlyList<string> Only { get; init; }

    /// <summary>The run that is repeated where it did not pass; null: none.</summary>
    public required string? Retest { get; init; }

    /// <summary>A run that broke off ends, and a new one begins.</summary>
    public required bool Anew { get; init; }
    public required int Repeat { get; init; }
    public required string Language { get; init; }
    public required string? Data { get; init; }
    /// <summary>What stations without a simulated vehicle may name.</summary>
    public required AdapterRegistry Adapters { get; init; }
    public required bool AsJson { get; init; }
}
