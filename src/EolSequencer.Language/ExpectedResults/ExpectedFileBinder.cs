using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.ExpectedResults;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>Reads a file of expected results.</summary>
internal static class ExpectedFileBinder
{
    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a file of expected results",
        [
            new("expected-results", Ids.FileForm, "id of the file"),
            new("tests", Forms.Names(Ids.NameForm, Forms.Map(ExpectedRunBinder.Shape), 1), "by name: what is rehearsed, and what must come of it"),
        ],
        ExpectedRunBinder.CommonKeys);

    /// <summary>The file; null: already reported.</summary>
    public static ExpectedFile? Bind(PlantFile file, ExpectedPlant plant)
    {
        var report = plant.Folder.Report;
        if (file.Root is not { } root || MapReader.Open(root, File, report) is not { } keys) return null;
        var id = keys.Find("expected-results") is { } node ? Ids.OfFile(node, "a file of expected results", report) : null;
        var tests = keys.FreeMap("tests");
        if (tests is { Entries.Count: 0 }) report.Add(ExpectedCodes.NoTests, tests.Place, "there is no test here");
        var runs = new List<ExpectedRun>();
        foreach (var (key, value) in tests?.Entries ?? [])
        {
            var name = Ids.Name(key, "the name of a test", report);
            if (MapReader.Open(value, ExpectedRunBinder.Shape, report) is not { } test) continue;
            if (new ExpectedRunBinder(key, test, keys, plant).Bind() is { } run && name is not null) runs.Add(run);
        }

        return id is null || tests is null || runs.Count < tests.Entries.Count ? null : new ExpectedFile(id, root.Source.Path, [.. runs]);
    }
}
