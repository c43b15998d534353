using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>Checks files and folders for <c>eol check</c>.</summary>
public static class PlantChecker
{
    /// <summary>Checks each file, and everything in each folder; one fault is told once, however many files meet it.</summary>
    /// <param name="paths">Files and folders as the user typed them. A folder above plants means all of them.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    public static CheckResult Check(IEnumerable<string> paths, ExpressionCache cache)
    {
        var report = new Report();
        var plants = new Dictionary<string, PlantCheck>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            if (Directory.Exists(path)) AddFolder(path, plants, cache, report);
            else AddFile(path, plants, cache, report);
        }

        foreach (var plant in plants.Values) plant.Run();
        return new CheckResult(report.InOrder, report.LeftOut, plants.Values.Sum(plant => plant.Count));
    }

    private static void AddFile(string path, Dictionary<string, PlantCheck> plants, ExpressionCache cache, Report report)
    {
        if (!File.Exists(path))
        {
            Source.SourceFiles.TryRead(path, report);
            return;
        }

        if (PlantOf(path, plants, cache, report) is { } plant) plant.AddFile(path);
    }

    private static void AddFolder(string path, Dictionary<string, PlantCheck> plants, ExpressionCache cache, Report report)
    {
        var inside = PlantIndex.PlantsBelow(Path.GetFullPath(path));
        if (inside.Count == 0)
        {
            PlantOf(path, plants, cache, report)?.AddFolder(path);
            return;
        }

        foreach (var folder in inside) PlantOf(folder, plants, cache, report)?.AddFolder(folder);
    }

    private static PlantCheck? PlantOf(string path, Dictionary<string, PlantCheck> plants, ExpressionCache cache, Report report)
    {
        if (PlantFolder.RootOf(path) is { } root && plants.TryGetValue(root, out var known)) return known;
        if (PlantFolder.Find(path, report) is not { } folder) return null;
        return plants[folder.Root] = new PlantCheck(folder, cache);
    }
}
