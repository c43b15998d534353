using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Rehearsal.Campaigns;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>A finding is shown again from an order file, so what is invented must be an order like any other.</summary>
public sealed class InventedOrderTests
{
    [Fact]
    public void The_text_of_every_invented_order_loads_as_that_order()
    {
        using var folder = new OwnFolder();
        foreach (var vehicle in DemoCampaign.Vehicles)
        {
            var path = folder.PathOf($"{vehicle.Number}.yaml");
            File.WriteAllText(path, OrderFile.TextOf(vehicle.Order));
            var loaded = OrderLoader.Load(path, ExpressionCache.None, DemoPlant.Startup.Sequence!.VehicleType);
            Assert.Empty(loaded.Diagnostics);
            Assert.Equal(
                (vehicle.Order.Id, vehicle.Order.Vin, vehicle.Order.VehicleType),
                (loaded.Order!.Id, loaded.Order.Vin, loaded.Order.VehicleType));
            Assert.Equal(vehicle.Order.Options, loaded.Order.Options);
            Assert.Equal(vehicle.Order.Facts, loaded.Order.Facts);
        }
    }

    [Fact]
    public void No_two_vehicles_share_a_number() =>
        Assert.Equal(DemoCampaign.Vehicles.Length, DemoCampaign.Vehicles.Select(vehicle => vehicle.Order.Vin).Distinct().Count());
}
