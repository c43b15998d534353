using System.Globalization;
using System.Text;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>Loading is what stands between an author's slip and a vehicle on the line.</summary>
public sealed class SequenceLoaderTests : IDisposable
{
    private const string Head = """
        sequence: odd
        revision: 1
        vehicle-type: teal
        station-kind: startup
        devices: { bus: vehicle-bus, meter: supply-meter }
        steps:

        """;

    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_sequence_keeps_every_file_it_is_made_from()
    {
        var sequence = SequenceLoader.Load(_plant.PathOf("sequences/startup.yaml"), ExpressionCache.None).Sequence!;

        Assert.Equal(
            ["device-kinds/supply-meter.yaml", "fragments/window.yaml", "plant.yaml", "sequences/startup.yaml", "vehicle-types/teal.yaml"],
            sequence.Sources.Select(source => source.Path).Order(StringComparer.Ordinal));
        Assert.Equal(File.ReadAllText(_plant.PathOf("plant.yaml")), sequence.Sources.Single(source => source.Path == "plant.yaml").Text);
    }

    [Theory]
    [InlineData("sequences/nowhere.yaml", "FIL001")]
    [InlineData("sequences", "FIL002")]
    [InlineData("vehicle-types/teal.yaml", "PLT004")]
    [InlineData("pictures/rear.svg", "PLT003")]
    public void What_is_no_sequence_is_told_so(string path, string code)
    {
        var result = SequenceLoader.Load(_plant.PathOf(path), ExpressionCache.None);

        Assert.False(result.IsReady);
        Assert.Equal(code, Assert.Single(result.Diagnostics).Code.Id);
    }

    [Fact]
    public void A_limit_that_more_than_options_decide_is_refused_at_its_row()
    {
        var path = _plant.Put("odd.yaml", Head + "  - { step: a, read: meter.voltage, expect: limits.by_weight }\n");

        var finding = Assert.Single(SequenceLoader.Load(path, ExpressionCache.None).Diagnostics);

        Assert.Equal("LIM010", finding.Code.Id);
        Assert.EndsWith("teal.yaml", finding.Place.File, StringComparison.Ordinal);
        Assert.Contains("by_weight", finding.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_in_the_vehicle_type_is_told_without_its_consequences()
    {
        _plant.Replace("vehicle-types/teal.yaml", File.ReadAllText(_plant.PathOf("vehicle-types/teal.yaml")).Replace("data: 0x2104, as: uint16", "data: 0x2104, as: unit16", StringComparison.Ordinal));

        var finding = Assert.Single(SequenceLoader.Load(_plant.PathOf("sequences/startup.yaml"), ExpressionCache.None).Diagnostics);

        Assert.Equal("TYP001", finding.Code.Id);
    }

    [Fact]
    public void A_limit_of_the_wrong_dimension_is_refused_where_it_stands()
    {
        var path = _plant.Put("odd.yaml", Head + "  - { step: a, read: bus.feed, expect: limits.rest }\n");

        var finding = Assert.Single(SequenceLoader.Load(path, ExpressionCache.None).Diagnostics);

        Assert.Equal("UNT004", finding.Code.Id);
        Assert.EndsWith("teal.yaml", finding.Place.File, StringComparison.Ordinal);
        Assert.Contains("bus.feed", finding.Found, StringComparison.Ordinal);
    }

    /// <summary>Memory stands for work here: unlike time it does not depend on who else uses the machine.</summary>
    [Fact]
    public void Twice_the_steps_cost_twice_the_work()
    {
        var cache = ExpressionCache.In(_plant.PathOf(".cache"));
        long Cost(int steps)
        {
            var path = _plant.Put("odd.yaml", Head + Many(steps));
            Assert.True(SequenceLoader.Load(path, cache).IsReady);
            var before = GC.GetAllocatedBytesForCurrentThread();
            SequenceLoader.Load(path, cache);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        var few = Cost(400);
        var many = Cost(1600);

        Assert.True(many < few * 5, $"400 steps cost {few} bytes, 1600 cost {many}");
    }

    private static string Many(int steps)
    {
        var text = new StringBuilder();
        for (var number = 0; number < steps; number++)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  - {{ step: s{number}, read: meter.voltage, when: vehicle.tow, expect: limits.ripple }}");
        }

        return text.ToString();
    }
}
