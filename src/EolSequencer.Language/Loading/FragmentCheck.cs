using System.Collections.Immutable;
using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Loading;

/// <summary>Checks a fragment that no checked sequence uses. It is right when it is for one vehicle type of the plant; else the type it fits best is told of.</summary>
internal static class FragmentCheck
{
    public static void Run(PlantFile file, PlantFolder folder, ExpressionCache cache)
    {
        var best = folder.Of(FileKind.VehicleType).Select(type => Found(file, type, folder, cache)).MinBy(own => own.InOrder.Count(one => one.Severity == Severity.Error));
        if (best is not null) folder.Report.Absorb(best, static _ => true);
    }

    private static Report Found(PlantFile file, PlantFile type, PlantFolder folder, ExpressionCache cache)
    {
        var own = new Report();
        Run(file, type, folder.Reporting(own), cache);
        return own;
    }

    private static void Run(PlantFile file, PlantFile typeFile, PlantFolder folder, ExpressionCache cache)
    {
        var report = folder.Report;
        var batch = new ExpressionBatch(report, cache);
        if (typeFile.Root is not { } typeRoot || VehicleTypeBinder.Bind(typeRoot, batch, report) is not { } vehicle) return;
        if (folder.PlantFile?.Root is not { } plantRoot || PlantBinder.Bind(plantRoot, vehicle.Type, batch, report) is not { } plant) return;
        if (FragmentFile.Open(file.Root!, report) is not { } fragment) return;

        var roles = ImmutableSortedDictionary.CreateBuilder<string, DeviceKind>(StringComparer.Ordinal);
        foreach (var (role, kind) in fragment.Devices)
        {
            if (Kind(kind, vehicle, folder) is { } found) roles[role] = found;
        }

        SequenceBinder.BindAlone(fragment, file.Id, new BindingContext(folder, plant, vehicle, roles.ToImmutable(), batch, report, new PlaceBook(), []));
        batch.Compile();
    }

    private static DeviceKind? Kind(YamlScalar id, BoundVehicleType vehicle, PlantFolder folder) => id.Text == DeviceKind.VehicleBus
        ? vehicle.Type.Bus
        : folder.Find(FileKind.DeviceKind, id.Text, id.Place)?.Root is { } root ? DeviceKindBinder.Bind(root, folder.Report) : null;
}
