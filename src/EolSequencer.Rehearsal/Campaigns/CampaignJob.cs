using System.Collections.Immutable;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>One run of a campaign.</summary>
/// <param name="Number">From 0, in the order of the plan; the same settings give the same numbers.</param>
/// <param name="Seed">Fixes all that is left to chance.</param>
/// <param name="Faults">None: a good vehicle. One, or two of a pair.</param>
public sealed record CampaignJob(int Number, CampaignVehicle Vehicle, ulong Seed, ImmutableArray<InjectedFault> Faults)
{
    /// <summary>What is wrong, as it is written behind <c>--inject</c>; empty for a good vehicle.</summary>
    public string FaultText => string.Join(" ", Faults.Select(fault => fault.ToString()));
}
