using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>The demo plant is what a newcomer changes first; it must be without a finding.</summary>
public sealed class DemoPlantTests
{
    [Fact]
    public void The_demo_plant_is_without_a_finding()
    {
        var result = PlantChecker.Check([DemoPlant.Folder], ExpressionCache.None);

        Assert.Empty(result.Diagnostics);
        Assert.True(result.Files > 10);
    }

    [Fact]
    public void The_start_up_sequence_loads_with_everything_it_is_made_of()
    {
        var result = SequenceLoader.Load(DemoPlant.StartUp, ExpressionCache.None);

        Assert.Empty(result.Diagnostics);
        var sequence = Assert.IsType<CheckedSequence>(result.Sequence);
        Assert.Equal("startup", sequence.Id);
        Assert.Equal(["bus", "line", "meter", "noise"], sequence.Roles.Select(role => role.Role).Order());
        Assert.Contains(sequence.Sources, source => source.Path == "fragments/window.yaml" && source.Hash.Length == 64);
        Assert.Equal(64, sequence.CompiledHash.Length);
    }

    [Fact]
    public void Every_order_of_the_demo_plant_loads()
    {
        foreach (var path in Directory.GetFiles(Path.Combine(DemoPlant.Folder, "orders")))
        {
            var result = OrderLoader.Load(path, ExpressionCache.None);

            Assert.Empty(result.Diagnostics);
            Assert.NotNull(result.Order);
        }
    }

    [Fact]
    public void The_demo_station_binds_every_role_of_the_sequence()
    {
        var station = StationLoader.Load(Path.Combine(DemoPlant.Folder, "stations", "startup.yaml")).Station!;
        var sequence = SequenceLoader.Load(DemoPlant.StartUp, ExpressionCache.None).Sequence!;

        Assert.Empty(StationFit.Check(station, sequence));
        Assert.Equal("M-0417", station.Find("meter")!.Instrument!.Id);
    }
}
