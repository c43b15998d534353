using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>What belongs to one control unit exists only on vehicles that have the unit.</summary>
internal static class VehicleChecks
{
    public static void Run(VehicleType type, PossibleVehicles vehicles, Report report)
    {
        var units = type.ControlUnits.ToDictionary(unit => unit.Name, StringComparer.Ordinal);
        foreach (var channel in type.Bus.Channels.Values) Check(channel.Name, channel.When, UnitOf(channel.Source));
        foreach (var action in type.Bus.Actions.Values) Check(action.Name, action.When, UnitOf(action.Source));

        void Check(string name, Expression? when, string? unitName)
        {
            if (unitName is null || when is null || units[unitName] is not { When: { } unitWhen } || ReferenceEquals(when, unitWhen)) return;
            var present = vehicles.Where(when, Arguments.None).Maybe;
            if (present.Without(vehicles.Where(unitWhen, Arguments.None).Surely).First is not { } lacking) return;
            report.Add(VehicleCodes.UnitMissing, when.Place, $"'{name}' exists on a vehicle with {vehicles.Describe(lacking)}, which has no '{unitName}'");
        }
    }

    private static string? UnitOf(ChannelSource? source) => source switch
    {
        ChannelSource.Data data => data.Ecu,
        ChannelSource.RoutineResult routine => routine.Ecu,
        ChannelSource.Service service => service.Ecu,
        _ => null,
    };

    private static string? UnitOf(ActionSource? source) => source switch
    {
        ActionSource.Control control => control.Ecu,
        ActionSource.Write write => write.Ecu,
        ActionSource.Routine routine => routine.Ecu,
        ActionSource.Service service => service.Ecu,
        _ => null,
    };
}
