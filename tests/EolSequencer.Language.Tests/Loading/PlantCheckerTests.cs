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

    /// <summary>What builds on a faulty document waits, but no other document does.</summary>
    [Fact]
    public void A_fault_of_one_sequence_hides_nothing_of_the_next()
    {
        const string Head = "revision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: { meter: supply-meter }\ndefaults: { within: 5 s }\nsteps:\n";
        string[] paths =
        [
            _plant.Put("sequences/first.yaml", $"sequence: first\n{Head}  - {{ step: a, read: meter.nothing, expect: 1 .. 2 V }}\n"),
            _plant.Put("sequences/second.yaml", $"sequence: second\n{Head}  - {{ step: a, when: vehicle.tow, read: meter.voltage, expect: 1 .. 2 V }}\n  - {{ step: b, compute: results.a.V, unit: V, expect: 1 .. 2 V }}\n"),
            _plant.Put("sequences/third.yaml", $"sequence: third\n{Head}  - {{ step: a, read: meter.voltage }}\n"),
            _plant.Put("sequences/fourth.yaml", $"sequence: fourth\n{Head}  - {{ step: a, read: meter.voltage, expect: 1 .. 2 V,  }}\n  - *anchor\n"),
        ];

        var together = PlantChecker.Check(paths, ExpressionCache.None).Diagnostics;
        var alone = paths.SelectMany(path => PlantChecker.Check([path], ExpressionCache.None).Diagnostics).ToList();

        Assert.Equal(4, alone.Select(finding => finding.Place.File).Distinct().Count());
        Assert.Equal(alone.Select(finding => finding.ToString()).Order(StringComparer.Ordinal), together.Select(finding => finding.ToString()).Order(StringComparer.Ordinal));
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

            Assert.DoesNotContain(result.Diagnostics, finding => !TestPlant.IsMeant(finding));
            Assert.Equal(11, result.Files);
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

        Assert.Equal("SCR010", Assert.Single(PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics, finding => !TestPlant.IsMeant(finding)).Code.Id);
        Assert.Empty(PlantChecker.Check([script], ExpressionCache.None).Diagnostics);

        _plant.Put("sequences/second.yaml", "sequence: second\n");
        Assert.DoesNotContain(PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics, one => one.Code.Id == "SCR010");
    }

    [Fact]
    public void What_no_sequence_uses_is_told_when_the_whole_plant_is_checked()
    {
        _plant.Put("fragments/idle.yaml", "fragment: idle\nsteps: [ { step: rest, wait: 1 s } ]\n");
        _plant.Put("device-kinds/scale.yaml", "device-kind: scale\nchannels: { weight: { as: number, unit: kg } }\n");
        _plant.Replace("sequences/roller.yaml", File.ReadAllText(_plant.PathOf("sequences/roller.yaml")).Replace("limits.wheel", "0 .. 200 N", StringComparison.Ordinal).Replace("0 .. 200 N[fl]", "0 .. 200 N", StringComparison.Ordinal));

        var found = PlantChecker.Check([_plant.Root], ExpressionCache.None).Diagnostics.Select(finding => $"{finding.Code}: {finding.Found}").ToList();

        Assert.Contains("ADV013: no sequence uses the fragment 'idle'", found);
        Assert.Contains("ADV014: no sequence has a device of kind 'scale'", found);
        Assert.Contains("ADV012: no step of any sequence is judged by limits.wheel", found);
        Assert.DoesNotContain("ADV012: no step of any sequence is judged by limits.ripple", found);
        Assert.Empty(PlantChecker.Check([_plant.PathOf("fragments/idle.yaml"), _plant.PathOf("device-kinds/scale.yaml")], ExpressionCache.None).Diagnostics);
    }

    [Fact]
    public void A_sequence_is_run_without_the_advice_that_a_check_gives()
    {
        var path = _plant.Put("sequences/waits.yaml", "sequence: waits\nrevision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: { bus: vehicle-bus }\nsteps: [ { step: awake, await: bus.awake } ]\n");

        Assert.Empty(SequenceLoader.Load(path, ExpressionCache.None).Diagnostics);
        Assert.Equal("ADV002", Assert.Single(PlantChecker.Check([path], ExpressionCache.None).Diagnostics).Code.Id);
    }
}
