using EolSequencer.Rehearsal.Campaigns;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>What is not planned is not proven: the plan is counted again by brute force.</summary>
public sealed class CampaignPlanTests
{
    private static readonly Dictionary<int, HashSet<InjectedFault>> Possible =
        DemoCampaign.Vehicles.ToDictionary(vehicle => vehicle.Number, vehicle => FaultCatalogue.PossibleOn(VehicleFacts.Of(vehicle.Order).Options).ToHashSet());

    [Fact]
    public void Every_combination_is_run_as_a_good_vehicle_with_every_seed()
    {
        var good = DemoCampaign.Plan(seeds: 3).Jobs.Where(job => job.Faults.IsEmpty).ToList();
        Assert.Equal(48 * 3, good.Count);
        Assert.Equal(48 * 3, good.Select(job => (job.Vehicle.Number, job.Seed)).Distinct().Count());
        Assert.Equal([1ul, 2ul, 3ul], good.Select(job => job.Seed).Distinct().Order());
    }

    [Fact]
    public void The_cover_shows_every_two_option_values_that_occur_together()
    {
        var cover = CampaignVehicle.Covering(DemoCampaign.Vehicles);
        Assert.InRange(cover.Length, 4, 10);
        foreach (var vehicle in DemoCampaign.Vehicles)
        {
            foreach (var one in vehicle.Options)
            {
                Assert.All(vehicle.Options, other => Assert.Contains(cover, covering => covering.Options[one.Key] == one.Value && covering.Options[other.Key] == other.Value));
            }
        }
    }

    [Fact]
    public void Every_fault_is_run_on_every_vehicle_of_the_cover_that_can_have_it_and_on_one_at_least()
    {
        var cover = CampaignVehicle.Covering(DemoCampaign.Vehicles).Select(vehicle => vehicle.Number).ToHashSet();
        var runs = DemoCampaign.Plan().Jobs.Where(job => job.Faults.Length == 1).ToLookup(job => job.Faults[0].ToString(), job => job.Vehicle.Number);
        foreach (var fault in Possible.Values.SelectMany(faults => faults).Distinct())
        {
            var wanted = cover.Where(number => Possible[number].Contains(fault)).ToList();
            if (wanted.Count > 0) Assert.Equal(wanted.Order(), runs[fault.ToString()].Order());
            else Assert.Single(runs[fault.ToString()]);
        }
    }

    [Fact]
    public void On_request_every_fault_is_run_on_every_vehicle_that_can_have_it() =>
        Assert.Equal(
            Possible.Values.Sum(faults => faults.Count),
            DemoCampaign.Plan(everyVehicle: true).Jobs.Count(job => job.Faults is [{ Point.TakesAnyPlace: false }]));

    [Fact]
    public void Every_two_points_that_a_vehicle_can_have_together_are_run_together_once()
    {
        var pairs = DemoCampaign.Plan(pairs: true).Jobs.Where(job => job.Faults.Length == 2).ToList();
        Assert.All(pairs, job => Assert.All(job.Faults, fault => Assert.Contains(fault, Possible[job.Vehicle.Number])));

        var wanted = new HashSet<(string, string)>();
        foreach (var points in Possible.Values.Select(faults => faults.Select(fault => fault.Point.Name).Distinct().ToList()))
        {
            wanted.UnionWith(from one in points from other in points where string.CompareOrdinal(one, other) < 0 select (one, other));
        }

        Assert.Equal(wanted.Order(), pairs.Select(job => job.Faults.Select(fault => fault.Point.Name).Order(StringComparer.Ordinal).ToArray()).Select(names => (names[0], names[1])).Order());
    }

    [Fact]
    public void Over_all_pairs_every_place_of_a_point_has_its_turn()
    {
        var seen = DemoCampaign.Plan(pairs: true).Jobs.Where(job => job.Faults.Length == 2).SelectMany(job => job.Faults).Distinct().ToHashSet();
        Assert.Empty(Possible.Values.SelectMany(faults => faults).Distinct().Where(fault => !seen.Contains(fault)).Select(fault => fault.ToString()));
    }
}
