using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Tests.Binding.Reach;

/// <summary>A proof over "every vehicle" is worth what this list of vehicles is worth.</summary>
public sealed class PossibleVehiclesTests
{
    private const string Units = "ecus: { gateway: { can: { request: 0x710, response: 0x718 }, when: %WHEN% } }";

    [Fact]
    public void Impossible_combinations_are_left_out()
    {
        var (vehicles, _) = Of("""
            options: { drive: { one-of: [front, all] }, tow: { as: yes-no } }
            impossible: [vehicle.drive == "front" && vehicle.tow]
            """, "vehicle.tow");

        Assert.Equal(["drive front, tow no", "drive all, tow no", "drive all, tow yes"], Enumerable.Range(0, vehicles.Count).Select(vehicles.Describe));
    }

    [Fact]
    public void A_condition_holds_for_the_vehicles_whose_options_it_asks_for()
    {
        var (vehicles, when) = Of("options: { drive: { one-of: [front, all] }, tow: { as: yes-no } }", "vehicle.tow");

        var reached = vehicles.Where(when, Arguments.None);

        Assert.Equal("drive front, tow yes", vehicles.Describe(reached.Surely.First!.Value));
        Assert.True(reached.Maybe.Without(reached.Surely).IsEmpty);
        Assert.Equal(["drive front, tow no", "drive all, tow no"], Numbers(vehicles.All.Surely.Without(reached.Maybe), vehicles.Count).Select(vehicles.Describe));
    }

    [Fact]
    public void A_fact_with_a_closed_list_joins_the_combinations_when_it_is_asked_for()
    {
        const string Type = "options: { tow: { as: yes-no } }\norder: { market: { one-of: [north, south] } }\n";

        Assert.Equal(2, Of(Type, "vehicle.tow").Vehicles.Count);
        Assert.Equal(4, Of(Type, "order.market == \"north\"", "market").Vehicles.Count);
    }

    [Fact]
    public void What_a_free_text_of_the_order_decides_stays_open()
    {
        var (vehicles, when) = Of("options: { tow: { as: yes-no } }\norder: { paint: { as: text } }\n", "order.paint == \"red\" || vehicle.tow", "paint");

        var reached = vehicles.Where(when, Arguments.None);

        Assert.True(reached.Surely.IsEmpty);
        Assert.Equal(2, Numbers(reached.Maybe, 2).Count());
    }

    [Fact]
    public void Of_too_many_combinations_the_same_ones_are_drawn_each_time()
    {
        var options = "options: { " + string.Join(", ", Enumerable.Range(0, 13).Select(number => $"o{number}: {{ as: yes-no }}")) + " }";

        var first = Of(options, "vehicle.o0").Vehicles;
        var second = Of(options, "vehicle.o0").Vehicles;

        Assert.True(first.IsSample);
        Assert.Equal(PossibleVehicles.Most, first.Count);
        Assert.Equal(Enumerable.Range(0, first.Count).Select(first.Describe), Enumerable.Range(0, second.Count).Select(second.Describe));
        Assert.InRange(Numbers(first.Where(Of(options, "vehicle.o12").When, Arguments.None).Surely, first.Count).Count(), 1800, 2300);
    }

    [Fact]
    public void As_many_combinations_as_are_allowed_are_all_tried()
    {
        var options = "options: { " + string.Join(", ", Enumerable.Range(0, 12).Select(number => $"o{number}: {{ as: yes-no }}")) + " }";

        var vehicles = Of(options, "vehicle.o0").Vehicles;

        Assert.False(vehicles.IsSample);
        Assert.Equal(4096, vehicles.Count);
    }

    private static IEnumerable<int> Numbers(VehicleSet set, int count)
    {
        while (set.First is { } number)
        {
            yield return number;
            set = set.Without(VehicleSet.Where(count, other => other == number));
        }
    }

    private static (PossibleVehicles Vehicles, Expression? When) Of(string type, string when, params string[] facts)
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var root = Texts.ReadWell($"vehicle-type: test\n{type}\n{Units.Replace("%WHEN%", $"'{when}'", StringComparison.Ordinal)}\n");
        var bound = VehicleTypeBinder.Bind(root, batch, report)!;
        Assert.True(batch.Compile(), string.Join('\n', report.InOrder));
        Assert.Empty(report.InOrder);
        return (PossibleVehicles.Of(bound.Type, facts.ToHashSet()), bound.Type.ControlUnits[0].When);
    }
}
