using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Stations;

/// <summary>Reads a station's check against a reference: a sequence of its kind, and a reference with an order of that sequence's vehicle type.</summary>
internal static class ShiftCheckBinder
{
    private static readonly Words<bool> Often = new(("shift", false), ("day", true));

    /// <summary>The keys.</summary>
    public static MapShape Shape { get; } = new(
        "a check",
        [
            new("sequence", Ids.FileNamed(Subject.Sequence), "id of the sequence with the known values; its runs count for no vehicle"),
            new("reference", Forms.Text, "the number of the reference; its order is looked for in the plant"),
        ],
        [new("every", Forms.Word(Often), "how often it is due; shift if nothing is said")]);

    /// <summary>The check; null: already reported.</summary>
    /// <param name="stationKind">Null: already reported.</param>
    public static ShiftCheckRule? Bind(MapReader keys, string? stationKind, PlantFolder folder)
    {
        var isDaily = keys.Word("every", Often) ?? false;
        if (keys.Text("sequence") is not { } id || keys.Text("reference") is not { } reference) return null;
        var sequence = folder.Find(FileKind.Sequence, id.Text, id.Place);
        var order = OrderLoader.FileFor(reference.Text, folder, reference.Place);
        if (sequence is null || order is null) return null;
        Compare(id, ValueOf(sequence, "station-kind"), stationKind, "is for station kind", folder.Report);
        Compare(id, ValueOf(sequence, "vehicle-type"), ValueOf(order, "vehicle-type"), $"does not fit the order '{order.Id}': it tests", folder.Report);
        return new ShiftCheckRule(id.Text, reference.Text, isDaily);
    }

    private static void Compare(YamlScalar id, string? has, string? wanted, string what, Report report)
    {
        if (has is not null && wanted is not null && has != wanted) report.Add(StationCodes.NoCheck, id.Place, $"'{id.Text}' {what} '{has}', not '{wanted}'");
    }

    private static string? ValueOf(PlantFile file, string key) => (file.Root as YamlMap)?.Find(key)?.Value is YamlScalar value ? value.Text : null;
}
