namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>What a campaign is about. Two campaigns with equal heads have the same runs with the same results.</summary>
/// <param name="Sequence">Id of the sequence.</param>
/// <param name="Sources">Hash of all files that the sequence was made from.</param>
/// <param name="CycleMicroseconds">The sequence's cycle time; null when it says none.</param>
/// <param name="Settings">How far it goes, in words.</param>
/// <param name="Jobs">How many runs it has.</param>
/// <param name="Command">What shows one of its runs again, without seed, order and faults.</param>
public sealed record CampaignHead(
    string Plant, string Station, string Sequence, int Revision, string Sources, long? CycleMicroseconds, string Settings, int Jobs, string Program, string Command);
