using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>One check tells an author about all files, each fault once.</summary>
public sealed class PlantCheckerTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_fault_that_several_sequences_meet_is_told_once()
    {
        _plant.Replace("device-kinds/odd.yaml", File.ReadAllText(_plant.PathOf("device-kinds/supply-meter.yaml")).Replace("unit: V, every", "unit: v, every", StringComparison.Ordinal));
        _plant.Put("sequences/second.yaml", File.ReadAllText(_plant.PathOf("sequences/startup.yaml")).Replace("sequence: startup", "sequence: second", StringComparison.Ordinal));

        var finding = Assert.Single(PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics);

        Assert.Equal("UNT001", finding.Code.Id);
    }

    [Fact]
    public void A_folder_above_plants_means_all_of_them()
    {
        var above = Path.GetDirectoryName(_plant.Root)!;
        var holder = Directory.CreateTempSubdirectory("plants-");
        try
        {
            Directory.Move(_plant.Root, Path.Combine(holder.FullName, "one"));
            Directory.CreateDirectory(Path.Combine(holder.FullName, "two"));
            File.WriteAllText(Path.Combine(holder.FullName, "two", "plant.yaml"), "plant: two\nzone: UTC\nroute: [body]\n");

            var result = PlantChecker.Check([holder.FullName], ExpressionCache.None);

            Assert.Empty(result.Diagnostics);
            Assert.Equal(10, result.Files);
        }
        finally
        {
            Directory.Move(Path.Combine(holder.FullName, "one"), Path.Combine(above, Path.GetFileName(_plant.Root)));
            holder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_folder_inside_a_plant_is_checked_alone()
    {
        _plant.Put("device-kinds/odd.yaml", "device-kind: odd\nsharing: alone\n");

        Assert.Equal(2, PlantChecker.Check([_plant.PathOf("sequences")], ExpressionCache.None).Files);
        Assert.False(PlantChecker.Check([_plant.PathOf("sequences")], ExpressionCache.None).HasErrors);
        Assert.True(PlantChecker.Check([_plant.PathOf("device-kinds")], ExpressionCache.None).HasErrors);
    }

    [Fact]
    public void A_file_is_checked_by_its_kind()
    {
        var result = PlantChecker.Check([_plant.PathOf("fragments/window.yaml"), _plant.PathOf("plant.yaml"), _plant.PathOf("nowhere.yaml")], ExpressionCache.None);

        Assert.Equal(2, result.Files);
        Assert.Equal("FIL001", Assert.Single(result.Diagnostics).Code.Id);
    }

    [Fact]
    public void An_operator_script_is_compared_with_the_sequences_when_all_of_them_are_known()
    {
        var script = _plant.Put("scripts/hand.yaml", "operator-script: hand\nanswers: { nowhere.seen: ok }\n");

        Assert.Equal("SCR010", Assert.Single(PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics).Code.Id);
        Assert.Empty(PlantChecker.Check([script], ExpressionCache.None).Diagnostics);

        _plant.Put("sequences/second.yaml", "sequence: second\n");
        Assert.DoesNotContain(PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics, one => one.Code.Id == "SCR010");
    }
}
