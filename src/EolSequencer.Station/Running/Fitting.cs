using EolSequencer.Engine.Planning;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Running;

/// <summary>What one vehicle of a type has.</summary>
internal static class Fitting
{
    /// <summary>The control units whose condition holds for the order.</summary>
    public static IReadOnlyList<ControlUnit> Of(VehicleType type, Order order) =>
        [.. type.ControlUnits.Where(unit => unit.When is null || OrderScope.IsTrue(unit.When, order))];
}
