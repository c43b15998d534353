using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>What was asked of <c>eol rehearse</c>.</summary>
internal sealed record RehearseChoices
{
    public required string? Sequence { get; init; }
    public required string? Station { get; init; }
    public required string? Into { get; init; }
    public required string? Report { get; init; }
    public required CampaignSettings Settings { get; init; }
    public required int Cores { get; init; }
    public required string? Html { get; init; }
    public required bool AsJson { get; init; }

    /// <summary>What does not go together; null when all does.</summary>
    public string? Fault => this switch
    {
        { Sequence: null, Report: null } => "write SEQUENCE, or --report FILE for a campaign that has run",
        { Sequence: not null, Report: not null } => "--report runs nothing: leave SEQUENCE out",
        { Settings.Seeds: < 1 } => "--seeds counts from 1",
        { Cores: < 1 } => "--cores counts from 1",
        _ => null,
    };
}
