using System.Collections.Frozen;
using System.Collections.Immutable;
using EolSequencer.Simulators.Faults.Points;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.Faults;

/// <summary>Every fault point there is.</summary>
public static class FaultCatalogue
{
    private static readonly FrozenDictionary<string, FaultPoint> ByName;

    static FaultCatalogue()
    {
        All =
        [
            .. SupplyPoints.All, .. LampPoints.All, .. SwitchPoints.All, .. DoorPoints.All, .. ComfortPoints.All,
            .. ClusterPoints.All, .. ChassisPoints.All, .. RestraintPoints.All, .. EnginePoints.All, .. TractionPoints.All,
            .. SelectorPoints.All, .. TrailerPoints.All, .. CodingPoints.All, .. UnitPoints.All, .. BusPoints.All,
            .. BenchPoints.All, .. OperatorPoints.All,
        ];
        ByName = All.ToFrozenDictionary(point => point.Name, StringComparer.Ordinal);
    }

    /// <summary>All of them, grouped by what they belong to.</summary>
    public static ImmutableArray<FaultPoint> All { get; }

    /// <summary>The point of a name, or null.</summary>
    public static FaultPoint? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>False when the vehicle lacks the part.</summary>
    /// <param name="options">The vehicle's options as words, as <see cref="VehicleFacts.Options"/> has them.</param>
    public static bool CanHave(IReadOnlyDictionary<string, string> options, InjectedFault fault) => fault.Point.IsPossible(Equipment.Of(options), fault.Place);

    /// <summary>
    /// Every single fault that a vehicle can have, one for each place and with the point's own number: what a campaign
    /// injects one after the other. Points that want a step are left out.
    /// </summary>
    /// <param name="options">The vehicle's options as words, as <see cref="VehicleFacts.Options"/> has them.</param>
    public static IEnumerable<InjectedFault> PossibleOn(IReadOnlyDictionary<string, string> options)
    {
        var equipment = Equipment.Of(options);
        foreach (var point in All)
        {
            if (point.TakesAnyPlace) continue;
            foreach (var place in point.Places.IsEmpty ? [null] : point.Places.Select(place => (string?)place))
            {
                if (point.IsPossible(equipment, place)) yield return new InjectedFault(point, place, null, null);
            }
        }
    }
}
