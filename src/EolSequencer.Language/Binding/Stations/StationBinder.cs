using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Binding.Stations;

/// <summary>Reads a station file. Which adapters there are, and what their settings mean, is not known here.</summary>
internal static class StationBinder
{
    private static readonly MapShape InstrumentShape = new(
        "an instrument",
        [new("id", Forms.Text, "what the instrument is called, written into every run")],
        [new("calibration-due", new ValueForm.Text("^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$", Subject.None), "when its calibration ends: 2027-03-31")]);

    // What else an adapter has are settings of its own.
    private static readonly ValueForm AdapterForm = new ValueForm.Open(new MapShape(
        "an adapter",
        [new("adapter", Forms.Text, "what serves the role")],
        [
            new("wired-to", Forms.Text, "whose wires a simulated instrument hangs on"),
            new("instrument", Forms.Map(InstrumentShape), "identity and calibration, written into every run"),
        ]));

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a station",
        [
            new("station", Ids.FileForm, "id of the station; held by one process at a time"),
            new("station-kind", Ids.FileNamed(Subject.StationKind), "which sequences run here"),
            new("data", Forms.Text, "data folder, relative to this file; one for all stations of a computer, outside the plant"),
            new("devices", Forms.Names(Ids.FirstNameForm, AdapterForm), "binds each role of the sequences to an adapter"),
        ],
        [
            new("title", Forms.Texts, "what people call it"),
            new("scanner", AdapterForm, "where scanned codes come from"),
            new("orders-from", Forms.Map(OrderAddressBinder.Shape), "where it asks for orders that the plant does not have"),
            new("shift-check", Forms.Map(ShiftCheckBinder.Shape), "its check against a reference, due again and again"),
        ]);

    /// <summary>The station; null: already reported.</summary>
    public static StationFile? Bind(PlantFile file, PlantFolder folder)
    {
        var report = folder.Report;
        if (file.Root is not { } root || MapReader.Open(root, File, report) is not { } keys) return null;
        var id = keys.Find("station") is { } idNode ? Ids.OfFile(idNode, "a station", report) : null;
        var kind = keys.Find("station-kind") is { } kindNode ? Ids.OfFile(kindNode, "'station-kind'", report) : null;
        var data = DataFolder(keys, file, folder);
        var scanner = keys.FreeMap("scanner") is { } map ? Adapter(map, "the scanner", report) : null;
        var devices = Devices(keys.FreeMap("devices"), report);
        return id is null || kind is null || data is null ? null : new StationFile
        {
            Id = id,
            Title = keys.Texts("title")?.ToLocalText() ?? LocalText.Plain(id),
            StationKind = kind,
            Place = keys.Find("station")!.Place,
            DataFolder = data,
            Scanner = scanner,
            Devices = devices,
            OrdersFrom = keys.Open("orders-from", OrderAddressBinder.Shape) is { } address ? OrderAddressBinder.Bind(address) : null,
            ShiftCheck = keys.Open("shift-check", ShiftCheckBinder.Shape) is { } check ? ShiftCheckBinder.Bind(check, kind, folder) : null,
        };
    }

    private static string? DataFolder(MapReader keys, PlantFile file, PlantFolder folder)
    {
        if (keys.Text("data") is not { } text) return null;
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(text.Text, Path.GetDirectoryName(file.Path)!));
        if (full != folder.Root && !full.StartsWith(folder.Root + Path.DirectorySeparatorChar, StringComparison.Ordinal)) return full;
        keys.Report.Add(StationCodes.DataInPlant, text.Place, $"{Shown.Quoted(text.Text)} lies inside the plant's folder");
        return null;
    }

    private static ImmutableArray<RoleBinding> Devices(YamlMap? map, Report report)
    {
        var roles = ImmutableArray.CreateBuilder<RoleBinding>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var role = Ids.FirstName(key, "a device", report);
            if (value.AsMap($"the device '{key.Text}'", report) is not { } own || Adapter(own, $"the device '{key.Text}'", report) is not { } adapter) continue;
            var instrument = own.Find("instrument") is { } entry ? Instrument(entry.Value, report) : null;
            if (own.Find("wired-to") is { Value: YamlScalar to } && map!.Find(to.Text) is null)
            {
                report.Add(StationCodes.WiredToUnknown, to.Place, $"the station has no device {Shown.Quoted(to.Text)}");
            }

            if (role is not null) roles.Add(new RoleBinding(role, adapter, instrument));
        }

        return roles.ToImmutable();
    }

    private static AdapterBinding? Adapter(YamlMap map, string what, Report report)
    {
        if (map.Find("adapter") is { } entry)
        {
            return entry.Value.AsText("'adapter'", report) is { } name ? new AdapterBinding(name.Text, name.Place, SettingReading.Read(map, "adapter", "instrument")) : null;
        }

        report.Add(StationCodes.NoAdapter, map.Entries is [var first, ..] ? first.Key.Place : map.Place, $"{what} names no adapter");
        return null;
    }

    private static Instrument? Instrument(YamlNode node, Report report)
    {
        if (MapReader.Open(node, InstrumentShape, report) is not { } keys) return null;
        DateOnly? due = null;
        if (keys.Text("calibration-due") is { } text)
        {
            if (DateOnly.TryParseExact(text.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) due = date;
            else report.Add(StationCodes.BadDate, text.Place, $"{Shown.Quoted(text.Text)} is no date");
        }

        return keys.Text("id") is { } id ? new Instrument(id.Text, due) : null;
    }
}
