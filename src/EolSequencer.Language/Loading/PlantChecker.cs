using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>Checks files and folders for <c>eol check</c>.</summary>
public static class PlantChecker
{
    /// <summary>Checks each file, and everything in each folder; one fault is told once, however many files meet it.</summary>
    /// <param name="paths">Files and folders as the user typed them. A folder above plants means all of them.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    /// <param name="knowledge">What is known of rehearsals; null: nothing is said about it.</param>
    public static CheckResult Check(IEnumerable<string> paths, ExpressionCache cache, IRehearsalKnowledge? knowledge = null)
    {
        var report = new Report();
        var plants = new Dictionary<string, PlantCheck>(StringComparer.Ordinal);
        Func<PlantFolder, PlantCheck> make = folder => new PlantCheck(folder, cache, knowledge);
        foreach (var path in paths)
        {
            if (Directory.Exists(path)) AddFolder(path, plants, make, report);
            else AddFile(path, plants, make, report);
        }

        foreach (var plant in plants.Values) plant.Run();
        return new CheckResult(report.InOrder, report.LeftOut, plants.Values.Sum(plant => plant.Count));
    }

    private static void AddFile(string path, Dictionary<string, PlantCheck> plants, Func<PlantFolder, PlantCheck> make, Report report)
    {
        if (!File.Exists(path))
        {
            Source.SourceFiles.TryRead(path, report);
            return;
        }

        if (PlantOf(path, plants, make, report) is { } plant) plant.AddFile(path);
    }

    private static void AddFolder(string path, Dictionary<string, PlantCheck> plants, Func<PlantFolder, PlantCheck> make, Report report)
    {
        var inside = PlantIndex.PlantsBelow(Path.GetFullPath(path));
        if (inside.Count == 0)
        {
            PlantOf(path, plants, make, report)?.AddFolder(path);
            return;
        }

        foreach (var folder in inside) PlantOf(folder, plants, make, report)?.AddFolder(folder);
    }

    private static PlantCheck? PlantOf(string path, Dictionary<string, PlantCheck> plants, Func<PlantFolder, PlantCheck> make, Report report)
    {
        if (PlantFolder.RootOf(path) is { } root && plants.TryGetValue(root, out var known)) return known;
        if (PlantFolder.Find(path, report) is not { } folder) return null;
        return plants[folder.Root] = make(folder);
    }
}
