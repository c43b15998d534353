using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>Loads files of expected results for <c>eol test</c>.</summary>
public static class ExpectedLoader
{
    /// <summary>Loads each file named, and each such file in each folder named. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="paths">Files and folders as the user typed them. A folder above plants means all of them.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    /// <param name="knowledge">What is known of rehearsals.</param>
    public static ExpectedLoad Load(IEnumerable<string> paths, ExpressionCache cache, IRehearsalKnowledge knowledge)
    {
        var report = new Report();
        var plants = new Dictionary<string, (ExpectedPlant Plant, List<PlantFile> Files)>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            if (Directory.Exists(path)) AddFolder(path);
            else if (PlantFiles.Open(path, FileKind.ExpectedResults, report) is { } found) Add(found.File, Of(found.Folder.Root));
        }

        var files = plants.Values.SelectMany(one => one.Files.Select(file => ExpectedFileBinder.Bind(file, one.Plant))).OfType<ExpectedFile>().ToList();
        return new ExpectedLoad(report.HasErrors ? [] : [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)], report.InOrder, report.LeftOut);

        void AddFolder(string path)
        {
            var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
            var inside = PlantIndex.PlantsBelow(full);
            foreach (var root in inside.Count > 0 ? inside : [full])
            {
                if (Of(root) is not { } plant) continue;
                foreach (var file in plant.Plant.Folder.Of(FileKind.ExpectedResults).Where(file => file.Path.StartsWith(full + Path.DirectorySeparatorChar, StringComparison.Ordinal))) Add(file, plant);
            }
        }

        (ExpectedPlant Plant, List<PlantFile> Files)? Of(string path)
        {
            if (PlantFolder.RootOf(path) is { } root && plants.TryGetValue(root, out var known)) return known;
            if (PlantFolder.Find(path, report) is not { } folder) return null;
            return plants[folder.Root] = (new ExpectedPlant(folder, cache, knowledge), []);
        }

        void Add(PlantFile file, (ExpectedPlant Plant, List<PlantFile> Files)? plant)
        {
            // The folder through which the file was found and the one it is kept in may be two readings of one plant.
            if (plant?.Plant.Folder.At(file.Path) is { } own && !plant.Value.Files.Contains(own)) plant.Value.Files.Add(own);
        }
    }
}
