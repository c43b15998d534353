using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>What is known of a vehicle: the latest whole run at each station kind, in the order they began. Partial runs are left out.</summary>
public sealed record VehicleRollUp(string Vin, ImmutableArray<RunSummary> Latest)
{
    /// <summary>The numbers of those runs that have ended, added up.</summary>
    public RollUp Numbers => Latest.Aggregate(RollUp.Empty, (sum, run) => run.End is { Numbers: var more }
        ? new RollUp(sum.None + more.None, sum.Pass + more.Pass, sum.Inconclusive + more.Inconclusive, sum.Fail + more.Fail, sum.Error + more.Error)
        : sum);

    /// <summary>True when there is a run and every one of them has passed; whether the route is complete, the plant knows.</summary>
    public bool HasPassed => !Latest.IsEmpty && Latest.All(run => run.HasPassed);
}
