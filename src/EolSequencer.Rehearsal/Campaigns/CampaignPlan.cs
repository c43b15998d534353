using System.Collections.Immutable;
using EolSequencer.Model.Sequences;
using EolSequencer.Engine.Planning;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>
/// All runs of a campaign: good vehicles of every combination, every fault on the combinations it is tried on, and on
/// request two faults at a time.
/// </summary>
/// <remarks>
/// Pairs: every two fault points that a vehicle can have together are tried together once, on one vehicle. With two faults
/// in a run nothing smaller covers all pairs. Vehicles go round, and of a point's places the one with the fewest runs so far is
/// taken, so that over all pairs of a point each of its places has its turn.
/// </remarks>
public sealed class CampaignPlan
{
    private readonly List<CampaignJob> _jobs = [];
    private readonly Dictionary<int, ImmutableArray<InjectedFault>> _possible = [];
    private readonly CampaignSettings _settings;

    private CampaignPlan(CheckedSequence sequence, ImmutableArray<CampaignVehicle> vehicles, CampaignSettings settings)
    {
        (Vehicles, _settings) = (vehicles, settings);
        foreach (var vehicle in vehicles) _possible[vehicle.Number] = [.. FaultCatalogue.PossibleOn(VehicleFacts.Of(vehicle.Order).Options).Where(fault => FaultFit.HasDevice(sequence, fault.Point)), .. OfThePerson(sequence, vehicle)];
        NotTried = [.. FaultCatalogue.All.Where(point => !FaultFit.HasDevice(sequence, point))];
    }

    /// <summary>The combinations, by number.</summary>
    public ImmutableArray<CampaignVehicle> Vehicles { get; }

    /// <summary>The runs, by number.</summary>
    public IReadOnlyList<CampaignJob> Jobs => _jobs;

    /// <summary>Every fault that some vehicle can have, in the order of the catalogue.</summary>
    public IReadOnlyList<InjectedFault> Faults { get; private set; } = [];

    /// <summary>Faults of instruments that the sequence does not use: no channel of it could show them.</summary>
    public ImmutableArray<FaultPoint> NotTried { get; }

    /// <param name="vehicles">Every combination of options.</param>
    public static CampaignPlan Of(CheckedSequence sequence, ImmutableArray<CampaignVehicle> vehicles, CampaignSettings settings)
    {
        var plan = new CampaignPlan(sequence, vehicles, settings);
        plan.AddGood();
        plan.AddFaults(settings.EveryVehicle ? vehicles : CampaignVehicle.Covering(vehicles));
        if (settings.Pairs) plan.AddPairs();
        return plan;
    }

    private void AddGood()
    {
        for (var seed = 0; seed < _settings.Seeds; seed++)
        {
            foreach (var vehicle in Vehicles) Add(vehicle, _settings.FirstSeed + (ulong)seed);
        }
    }

    private void AddFaults(ImmutableArray<CampaignVehicle> tried)
    {
        var faults = new Dictionary<string, InjectedFault>(StringComparer.Ordinal);
        foreach (var vehicle in Vehicles)
        {
            foreach (var fault in _possible[vehicle.Number]) faults.TryAdd(fault.ToString(), fault);
        }

        var inOrder = FaultCatalogue.All.Select((point, at) => (point, at)).ToDictionary(pair => pair.point, pair => pair.at);
        Faults = [.. faults.Values.OrderBy(fault => inOrder[fault.Point])];
        foreach (var fault in Faults)
        {
            var fitting = tried.Where(vehicle => _possible[vehicle.Number].Contains(fault)).ToList();
            if (fitting.Count == 0) fitting = [Vehicles.First(vehicle => _possible[vehicle.Number].Contains(fault))];
            foreach (var vehicle in fitting) Add(vehicle, _settings.FirstSeed, fault);
        }
    }

    private void AddPairs()
    {
        var points = Faults.Where(fault => !fault.Point.TakesAnyPlace).Select(fault => fault.Point).Distinct().ToList();
        var used = Faults.ToDictionary(fault => fault, _ => 0);
        var turn = 0;
        for (var one = 0; one < points.Count; one++)
        {
            for (var other = one + 1; other < points.Count; other++, turn++)
            {
                for (var tried = 0; tried < Vehicles.Length; tried++)
                {
                    var vehicle = Vehicles[(turn + tried) % Vehicles.Length];
                    if (LeastUsed(vehicle, points[one], used) is not { } first || LeastUsed(vehicle, points[other], used) is not { } second) continue;
                    Add(vehicle, _settings.FirstSeed, first, second);
                    used[first]++;
                    used[second]++;
                    break;
                }
            }
        }
    }

    private InjectedFault? LeastUsed(CampaignVehicle vehicle, FaultPoint point, Dictionary<InjectedFault, int> used) =>
        _possible[vehicle.Number].Where(fault => fault.Point == point).MinBy(fault => used[fault]);

    private void Add(CampaignVehicle vehicle, ulong seed, params ImmutableArray<InjectedFault> faults) =>
        _jobs.Add(new CampaignJob(_jobs.Count, vehicle, seed, faults));

    // What a person can do wrong at a step: nothing at all, or calling good what is bad and bad what is good.
    private static IEnumerable<InjectedFault> OfThePerson(CheckedSequence sequence, CampaignVehicle vehicle)
    {
        var steps = Planner.For(sequence, vehicle.Order).Counting;
        foreach (var point in FaultCatalogue.All.Where(point => point.TakesAnyPlace))
        {
            foreach (var step in steps)
            {
                if (point.Concerns(step.Step)) yield return new InjectedFault(point, step.Id, null, null);
            }
        }
    }
}
