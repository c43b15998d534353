using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Station.Tests.Identifying;

/// <summary>A vehicle is tested by what its order and the station say, or not at all.</summary>
public sealed class IdentifyTests : IDisposable
{
    private readonly SmallPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_number_leads_to_its_order_and_to_the_sequence_in_force()
    {
        var vehicle = Found(Vehicle(vin: SmallPlant.Vin));
        Assert.Equal(("S-1", "brief", "bench"), (vehicle.Order.Id, vehicle.Sequence.Id, vehicle.Station.Id));
    }

    [Fact]
    public void An_order_file_leads_to_the_sequence_in_force() =>
        Assert.Equal("brief", Found(Vehicle(order: _plant.PathOf("orders/S-1.yaml"))).Sequence.Id);

    [Fact]
    public void A_sequence_that_is_named_is_run_though_another_is_in_force_beside_it()
    {
        _plant.Put("other.yaml", SmallPlant.Sequence("other", "box", "startup"));
        Assert.Equal(["STA008"], Errors(Vehicle(vin: SmallPlant.Vin)));
        Assert.Equal("other", Found(Vehicle(vin: SmallPlant.Vin, sequence: _plant.PathOf("other.yaml"))).Sequence.Id);
    }

    [Fact]
    public void No_order_is_no_run() => Assert.Equal(["ORD010"], Errors(Vehicle(vin: "11111111111111111")));

    [Fact]
    public void A_station_of_a_kind_that_nothing_is_written_for_is_no_run()
    {
        _plant.Put("station.yaml", SmallPlant.Station("roller"));
        Assert.Equal(["STA007"], Errors(Vehicle(vin: SmallPlant.Vin)));
    }

    [Fact]
    public void A_named_sequence_has_to_fit_the_station_and_the_order()
    {
        _plant.Put("other.yaml", SmallPlant.Sequence("other", "crate", "roller"));
        Assert.Equal(["ORD012", "STA006"], Errors(Vehicle(order: _plant.PathOf("orders/S-1.yaml"), sequence: _plant.PathOf("other.yaml"))));
    }

    [Fact]
    public void All_that_is_wrong_is_told_at_once()
    {
        _plant.Put("station.yaml", SmallPlant.Station("startup").Replace("devices:", "devcies:", StringComparison.Ordinal));
        var errors = Errors(Vehicle(vin: "11111111111111111"));
        Assert.Contains("ORD010", errors);
        Assert.Contains(errors, code => code.StartsWith("SYN", StringComparison.Ordinal));
    }

    private Identified Vehicle(string? vin = null, string? order = null, string? sequence = null) => Identify.Vehicle(new IdentifyRequest
    {
        StationFile = _plant.PathOf("station.yaml"), Vin = vin, OrderFile = order, SequenceFile = sequence, Cache = ExpressionCache.None,
    });

    private static IdentifiedVehicle Found(Identified identified)
    {
        Assert.True(identified.Vehicle is not null, string.Join('\n', identified.Diagnostics));
        return identified.Vehicle;
    }

    private static IEnumerable<string> Errors(Identified identified)
    {
        Assert.Null(identified.Vehicle);
        return identified.Diagnostics.Where(one => one.Severity == Severity.Error).Select(one => one.Code.Id);
    }
}
