using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>A campaign with all it needs, begun or to be continued.</summary>
internal sealed record ReadyCampaign(CampaignPlan Plan, CampaignRunner Runner, CampaignFile File, string Path);
