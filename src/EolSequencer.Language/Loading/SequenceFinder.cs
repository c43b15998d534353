using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Loading;

/// <summary>Finds the sequence in force: the one of a plant for a vehicle type and a station kind.</summary>
public static class SequenceFinder
{
    /// <summary>
    /// The full path of the sequence's file; null: there is none, or more than one, or a sequence cannot be read, so that
    /// nobody knows what it is for. The diagnostics say which.
    /// </summary>
    /// <param name="path">A file or folder of the plant.</param>
    public static (string? Path, IReadOnlyList<Diagnostic> Diagnostics) InForce(string path, string vehicleType, string stationKind)
    {
        var report = new Report();
        var found = PlantFolder.Find(path, report) is { } folder ? In(folder, vehicleType, stationKind) : null;
        return (report.HasErrors ? null : found?.Path, report.InOrder);
    }

    /// <summary>The sequence in force; null: already reported.</summary>
    /// <param name="place">Where it is asked for; null: not in a file.</param>
    internal static PlantFile? In(PlantFolder folder, string vehicleType, string stationKind, SourcePlace? place = null)
    {
        var all = folder.Of(FileKind.Sequence).ToList();
        var found = all.Where(file => ValueOf(file, "vehicle-type") == vehicleType && ValueOf(file, "station-kind") == stationKind).ToList();
        if (found is [var only]) return only;

        if (found.Count == 0)
        {
            var others = all.Count == 0 ? "it has no sequence at all" : $"it has {string.Join(", ", all.Select(Describe))}";
            folder.Report.Add(StationCodes.NoSequence, place ?? SourcePlace.None with { File = folder.Root }, $"the plant tests no '{vehicleType}' at a station of kind '{stationKind}'; {others}");
        }
        else
        {
            var files = string.Join(" and ", found.Select(file => $"'{file.Id}' ({file.RelativePath})"));
            folder.Report.Add(StationCodes.SeveralSequences, found[1].IdPlace, $"{files} are all for '{vehicleType}' at a station of kind '{stationKind}'");
        }

        return null;
    }

    private static string Describe(PlantFile file) =>
        $"'{file.Id}' ({file.RelativePath}) for '{ValueOf(file, "vehicle-type")}' at '{ValueOf(file, "station-kind")}'";

    private static string? ValueOf(PlantFile file, string key) => (file.Root as YamlMap)?.Find(key)?.Value is YamlScalar value ? value.Text : null;
}
