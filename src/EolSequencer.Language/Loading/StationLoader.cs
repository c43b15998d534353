using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>Loads station files.</summary>
public static class StationLoader
{
    /// <summary>Loads a station. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="path">The station's file, as the user typed it.</param>
    public static StationResult Load(string path)
    {
        var report = new Report();
        var station = PlantFiles.Open(path, FileKind.Station, report) is { } found ? StationBinder.Bind(found.File, found.Folder) : null;
        return new StationResult(report.HasErrors ? null : station, report.InOrder);
    }

    /// <summary>The files of all stations of a plant, by path; empty when there is no plant.</summary>
    /// <param name="path">A file or folder of the plant.</param>
    public static IReadOnlyList<string> FilesIn(string path) =>
        [.. (PlantFolder.Find(path, new Report())?.Of(FileKind.Station) ?? []).Select(file => file.Path).Order(StringComparer.Ordinal)];
}
