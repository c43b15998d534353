using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Plants;

/// <summary>Files refer to each other by id; a wrong file behind an id would test vehicles by the wrong limits.</summary>
public sealed class PlantFolderTests : IDisposable
{
    private readonly TestPlant _plant = new();
    private readonly Report _report = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void The_plant_is_the_nearest_folder_with_a_plant_file()
    {
        _plant.Put("other/plant.yaml", "plant: other\nzone: UTC\nroute: [body]\n");
        var inner = _plant.Put("other/sequences/a.yaml", "sequence: a\n");

        Assert.Equal(_plant.Root, PlantFolder.Find(_plant.PathOf("sequences/startup.yaml"), _report)!.Root);
        Assert.Equal(_plant.PathOf("other"), PlantFolder.Find(inner, _report)!.Root);
    }

    [Fact]
    public void A_plant_inside_a_plant_is_not_part_of_it()
    {
        _plant.Put("other/plant.yaml", "plant: other\n");
        _plant.Put("other/a.yaml", "device-kind: stray\n");

        Assert.Null(PlantFolder.Find(_plant.Root, _report)!.Find(FileKind.DeviceKind, "stray"));
    }

    [Fact]
    public void A_file_of_no_plant_is_told_so()
    {
        var folder = Directory.CreateTempSubdirectory("no-plant-");
        try
        {
            Assert.Null(PlantFolder.Find(Path.Combine(folder.FullName, "a.yaml"), _report));
            Assert.Equal("PLT001", Assert.Single(_report.InOrder).Code.Id);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Files_are_found_by_kind_and_id()
    {
        var folder = PlantFolder.Find(_plant.Root, _report)!;

        Assert.Equal("vehicle-types/teal.yaml", folder.Find(FileKind.VehicleType, "teal")!.RelativePath);
        Assert.Null(folder.Find(FileKind.DeviceKind, "teal"));
        Assert.Equal("plant.yaml", folder.PlantFile!.RelativePath);
        Assert.Empty(_report.InOrder);
    }

    [Fact]
    public void Two_files_with_one_id_are_reported_with_both_places()
    {
        var path = _plant.Put("device-kinds/again.yaml", "# copied and not renamed\ndevice-kind: supply-meter\n");

        PlantFolder.Find(_plant.Root, _report)!.ReportDuplicates();

        var finding = Assert.Single(_report.InOrder);
        Assert.Equal("PLT002", finding.Code.Id);
        Assert.Contains("again.yaml:2:14", finding.Place + finding.Found, StringComparison.Ordinal);
        Assert.Contains("supply-meter.yaml:1:14", finding.Place + finding.Found, StringComparison.Ordinal);
        Assert.NotNull(path);
    }

    [Fact]
    public void A_folder_with_too_many_files_is_no_plant()
    {
        Assert.NotNull(PlantIndex.Read(_plant.Root, _report, PlantTexts.OnDisk, most: 10));
        Assert.Empty(_report.InOrder);

        Assert.Null(PlantIndex.Read(_plant.Root, _report, PlantTexts.OnDisk, most: 9));
        Assert.Equal("PLT006", Assert.Single(_report.InOrder).Code.Id);
    }
}
