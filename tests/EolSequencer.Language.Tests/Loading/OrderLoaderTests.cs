using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>An order decides which limits a vehicle is judged by; a wrong one must not be taken.</summary>
public sealed class OrderLoaderTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void An_order_has_a_value_for_every_option_and_fact()
    {
        var result = OrderLoader.Load(_plant.PathOf("orders/T-1.yaml"), ExpressionCache.None);

        Assert.Empty(result.Diagnostics);
        var order = result.Order!;
        Assert.Equal(("T-1", "TESTVXN06AA000017", "teal"), (order.Id, order.Vin.Text, order.VehicleType));
        Assert.Equal(TruthValue.No, order.Options["tow"]);
        Assert.Equal(new TextValue("GW-1"), order.Facts["software[gateway]"]);
        Assert.Equal(new NumberValue(1850, UnitTable.Required("kg")), order.Facts["weight"]);
        Assert.DoesNotContain("software[powertrain]", order.Facts.Keys);
    }

    [Fact]
    public void The_same_order_may_come_as_json()
    {
        var path = _plant.Put("orders/T-2.json", """
            {
              "order": "T-2", "vin": "TESTVXN06AA000017", "vehicle-type": "teal",
              "options": { "drive": "front", "powertrain": "electric", "rims": "steel", "tow": false },
              "facts": {
                "market": "north", "paint": "pale blue", "weight": "1850 kg",
                "software": { "gateway": "GW-1", "brakes": "BR-2" }, "tyres": { "front": "A-1", "rear": "A-2" }
              }
            }
            """);

        var json = OrderLoader.Load(path, ExpressionCache.None);
        var yaml = OrderLoader.Load(_plant.PathOf("orders/T-1.yaml"), ExpressionCache.None);

        Assert.Empty(json.Diagnostics);
        Assert.Equal(yaml.Order!.Options, json.Order!.Options);
        Assert.Equal(yaml.Order.Facts, json.Order.Facts);
    }

    [Fact]
    public void An_order_for_a_loaded_vehicle_type_may_lie_anywhere()
    {
        var type = SequenceLoader.Load(_plant.PathOf("sequences/roller.yaml"), ExpressionCache.None).Sequence!.VehicleType;
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, File.ReadAllText(_plant.PathOf("orders/T-1.yaml")));

            Assert.Equal("T-1", OrderLoader.Load(path, ExpressionCache.None, type).Order!.Id);
            Assert.Equal("PLT001", Assert.Single(OrderLoader.Load(path, ExpressionCache.None).Diagnostics).Code.Id);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void An_order_is_found_by_the_number_on_the_vehicle()
    {
        var result = OrderLoader.LoadFor(_plant.Root, "TESTVXN06AA000017", ExpressionCache.None);

        Assert.Equal("T-1", result.Order!.Id);
    }

    [Fact]
    public void A_vehicle_without_an_order_is_told_so()
    {
        var result = OrderLoader.LoadFor(_plant.Root, "TESTVXN0XAA000005", ExpressionCache.None);

        Assert.Null(result.Order);
        Assert.Equal("ORD010", Assert.Single(result.Diagnostics).Code.Id);
    }

    [Fact]
    public void Two_orders_for_one_vehicle_are_none()
    {
        _plant.Put("orders/T-3.yaml", File.ReadAllText(_plant.PathOf("orders/T-1.yaml")).Replace("T-1", "T-3", StringComparison.Ordinal));

        var result = OrderLoader.LoadFor(_plant.Root, "TESTVXN06AA000017", ExpressionCache.None);

        Assert.Null(result.Order);
        Assert.Equal("ORD011", Assert.Single(result.Diagnostics).Code.Id);
    }

    [Theory]
    [InlineData("require", "ORD001", false)]
    [InlineData("warn", "ORD002", true)]
    [InlineData("off", null, true)]
    public void A_wrong_check_digit_weighs_what_the_market_says(string rule, string? code, bool isTaken)
    {
        _plant.Put("vehicle-types/plain.yaml", $$"""
            vehicle-type: plain
            vin: { check-digit: {{rule}} }
            options: {}
            ecus: {}
            """);
        var path = _plant.Put("orders/P-1.yaml", "order: P-1\nvin: TESTVXN00AA000017\nvehicle-type: plain\n");

        var result = OrderLoader.Load(path, ExpressionCache.None);

        Assert.Equal(isTaken, result.Order is not null);
        Assert.Equal(code is null ? [] : [code], result.Diagnostics.Select(one => one.Code.Id));
    }
}
