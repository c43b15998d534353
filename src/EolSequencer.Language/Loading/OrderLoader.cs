using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Loading;

/// <summary>Loads orders, as YAML or JSON, each against its vehicle type.</summary>
public static class OrderLoader
{
    /// <summary>Loads the order in a file. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="path">The order's file, as the user typed it.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    /// <param name="known">
    /// A vehicle type that is loaded already. An order for it needs nothing else, so its file may lie anywhere; for any
    /// other order the plant is the one above the file.
    /// </param>
    public static OrderResult Load(string path, ExpressionCache cache, VehicleType? known = null)
    {
        if (known is not null && LoadKnown(path, known) is { } result) return result;

        var report = new Report();
        var order = PlantFiles.Open(path, FileKind.Order, report) is { } found ? Bind(found.File, found.Folder, cache) : null;
        return new OrderResult(report.HasErrors ? null : order, report.InOrder);
    }

    /// <summary>Loads the one order of a plant for a vehicle.</summary>
    /// <param name="path">A file or folder of the plant.</param>
    /// <param name="vin">The vehicle's identification number as it was scanned or typed.</param>
    /// <param name="known">A vehicle type that is loaded already; an order for it need not load its own.</param>
    public static OrderResult LoadFor(string path, string vin, ExpressionCache cache, VehicleType? known = null)
    {
        var report = new Report();
        var order = PlantFolder.Find(path, report) is { } folder && FileFor(vin, folder) is { } file ? Bind(file, folder, cache, known) : null;
        return new OrderResult(report.HasErrors ? null : order, report.InOrder);
    }

    /// <summary>Loads an order that somebody answered with, which must be that of the vehicle asked for.</summary>
    /// <param name="plant">A file or folder of the plant whose vehicle types there are.</param>
    /// <param name="from">Who answered, as diagnostics show it.</param>
    /// <param name="bytes">The order, YAML or JSON.</param>
    public static OrderResult LoadAnswer(string plant, string from, byte[] bytes, string vin, ExpressionCache cache, VehicleType? known = null)
    {
        var report = new Report();
        if (PlantFolder.Find(plant, report) is not { } folder || SourceText.TryDecode(from, bytes, report) is not { } text || YamlReader.Read(text, report) is not { } root) return new OrderResult(null, report.InOrder);
        var order = Bind(root, folder, cache, known);
        if (order is not null && order.Vin.Text != vin) report.Add(OrderCodes.OtherVehicle, ((YamlMap)root).Find("vin")!.Value.Place, $"{Shown.Quoted(vin)} was asked for, this is '{order.Vin}'");
        return new OrderResult(report.HasErrors ? null : order, report.InOrder);
    }

    /// <summary>Loads an order from a file that lies outside of the plant.</summary>
    /// <param name="path">The order's file, as the user typed it.</param>
    /// <param name="plant">A file or folder of the plant whose vehicle types there are.</param>
    public static OrderResult LoadDropped(string path, string plant, ExpressionCache cache)
    {
        var report = new Report();
        var order = PlantFolder.Find(plant, report) is { } folder && SourceFiles.TryRead(path, report) is { } text && YamlReader.Read(text, report) is { } root
            ? Bind(root, folder, cache, null)
            : null;
        return new OrderResult(report.HasErrors ? null : order, report.InOrder);
    }

    /// <summary>The file of the first order of a plant, by path; null when it has none.</summary>
    /// <param name="path">A file or folder of the plant.</param>
    public static string? FirstIn(string path) =>
        PlantFolder.Find(path, new Report())?.Of(FileKind.Order).MinBy(file => file.Path, StringComparer.Ordinal)?.Path;

    /// <summary>The folder of the plant that a file or folder belongs to; null when there is none.</summary>
    public static string? PlantOf(string path) => PlantFolder.RootOf(path);

    /// <summary>The files of a plant that are an order with this number, or for this vehicle.</summary>
    /// <param name="path">A file or folder of the plant.</param>
    public static ILookup<string, string> FilesByNumberAndVin(string path) => (PlantFolder.Find(path, new Report())?.Of(FileKind.Order) ?? [])
        .SelectMany(file => new[] { file.Id, VinOf(file) ?? "" }.Select(key => (Key: key, file.Path)))
        .ToLookup(file => file.Key, file => file.Path, StringComparer.Ordinal);

    /// <summary>The order of a file; null: already reported.</summary>
    internal static Order? Bind(PlantFile file, PlantFolder folder, ExpressionCache cache, VehicleType? known = null) =>
        file.Root is { } root ? Bind(root, folder, cache, known) : null;

    private static Order? Bind(YamlNode root, PlantFolder folder, ExpressionCache cache, VehicleType? known)
    {
        if (OrderBinder.TypeOf(root, folder.Report) is not { } id) return null;
        if (known?.Id == id.Text) return new OrderBinder(known, folder.Report).Bind(root);
        if (folder.Find(FileKind.VehicleType, id.Text, id.Place)?.Root is not { } typeRoot) return null;

        var batch = new ExpressionBatch(folder.Report, cache);
        var type = VehicleTypeBinder.Bind(typeRoot, batch, folder.Report);
        return type is not null && batch.Compile() ? new OrderBinder(type.Type, folder.Report).Bind(root) : null;
    }

    /// <summary>The order when it is for the known type; null when it is for another, or cannot be read.</summary>
    private static OrderResult? LoadKnown(string path, VehicleType known)
    {
        var report = new Report();
        if (Directory.Exists(path) || SourceFiles.TryRead(path, report) is not { } text || YamlReader.Read(text, report) is not { } root) return null;
        if (OrderBinder.TypeOf(root, report)?.Text != known.Id) return null;
        var order = new OrderBinder(known, report).Bind(root);
        return new OrderResult(report.HasErrors ? null : order, report.InOrder);
    }

    /// <summary>The one order of a plant for a vehicle; null: already reported.</summary>
    /// <param name="place">Where the number was written; null: not in a file.</param>
    internal static PlantFile? FileFor(string vin, PlantFolder folder, SourcePlace? place = null)
    {
        var found = folder.Of(FileKind.Order).Where(file => VinOf(file) == vin).ToList();
        if (found is [var only]) return only;

        if (found.Count == 0) folder.Report.Add(OrderCodes.NoOrder, place ?? SourcePlace.None with { File = folder.Root }, $"the plant has no order for {Shown.Quoted(vin)}");
        else folder.Report.Add(OrderCodes.SeveralOrders, found[1].IdPlace, $"'{found[0].Id}' and '{found[1].Id}' are both for {vin}");
        return null;
    }

    /// <summary>Whether an order is for the vehicle type that a sequence tests; empty when it is.</summary>
    /// <param name="place">Where the two were brought together; null: not in a file.</param>
    public static IReadOnlyList<Diagnostic> CheckType(Order order, CheckedSequence sequence, SourcePlace? place = null)
    {
        var report = new Report();
        if (order.VehicleType != sequence.VehicleType.Id)
        {
            report.Add(
                OrderCodes.OtherType,
                place ?? SourcePlace.None with { File = sequence.Sources[0].Path },
                $"order '{order.Id}' is for a vehicle of type '{order.VehicleType}', the sequence '{sequence.Id}' tests '{sequence.VehicleType.Id}'");
        }

        return report.InOrder;
    }

    private static string? VinOf(PlantFile file) => (file.Root as YamlMap)?.Find("vin")?.Value is YamlScalar vin ? vin.Text : null;
}
