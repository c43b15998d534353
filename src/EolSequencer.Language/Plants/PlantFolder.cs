using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Plants;

/// <summary>
/// The folder of a plant: every file below it by kind and id, as it was at one moment. It reports into one report for
/// its whole life; a new check run makes a new one.
/// </summary>
public sealed class PlantFolder
{
    /// <summary>The file that makes a folder a plant.</summary>
    public const string PlantFileName = "plant.yaml";

    private readonly ILookup<(FileKind? Kind, string Id), PlantFile> _byId;
    private readonly Dictionary<string, PlantFile> _byPath;

    internal PlantFolder(string root, IReadOnlyList<PlantFile> files, Report report, PlantTexts texts)
    {
        Root = root;
        Files = files;
        Report = report;
        Texts = texts;
        _byId = files.ToLookup(file => (file.Kind, file.Id));
        _byPath = files.ToDictionary(file => file.Path, StringComparer.Ordinal);
    }

    /// <summary>Full path of the folder with <c>plant.yaml</c>.</summary>
    public string Root { get; }

    /// <summary>Every file that begins with a kind, and every YAML file that does not, by path.</summary>
    public IReadOnlyList<PlantFile> Files { get; }

    /// <summary>The file <c>plant.yaml</c> itself; null when it does not say that it is one.</summary>
    public PlantFile? PlantFile => At(Path.Combine(Root, PlantFileName)) is { Kind: FileKind.Plant } file ? file : null;

    internal Report Report { get; }

    internal PlantTexts Texts { get; }

    /// <summary>The plant that a file or folder belongs to, or null when there is none, which has then been reported.</summary>
    /// <param name="path">A path as the user typed it, which need not exist.</param>
    public static PlantFolder? Find(string path, Report report) => Find(path, report, PlantTexts.OnDisk);

    /// <summary>As above, with the texts handed in.</summary>
    internal static PlantFolder? Find(string path, Report report, PlantTexts texts)
    {
        if (RootOf(path) is { } root) return PlantIndex.Read(root, report, texts) is { } files ? new PlantFolder(root, files, report, texts) : null;

        report.Add(PlantCodes.NoPlant, SourcePlace.None with { File = path }, $"no folder from here upwards holds a {PlantFileName}");
        return null;
    }

    /// <summary>The folder of the plant that a file or folder belongs to, or null.</summary>
    internal static string? RootOf(string path)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        var folder = Directory.Exists(full) ? full : Path.GetDirectoryName(full);
        while (folder is not null && !File.Exists(Path.Combine(folder, PlantFileName))) folder = Path.GetDirectoryName(folder);
        return folder;
    }

    /// <summary>The same folder, for a pass whose findings are wanted by themselves. A file that cannot be read is reported where it always was.</summary>
    internal PlantFolder Reporting(Report report) => new(Root, Files, report, Texts);

    /// <summary>The file at a path, or null when the index does not hold it.</summary>
    /// <param name="path">A path as the user typed it.</param>
    public PlantFile? At(string path) => _byPath.GetValueOrDefault(Path.GetFullPath(path));

    /// <summary>The files of one kind.</summary>
    public IEnumerable<PlantFile> Of(FileKind kind) => Files.Where(file => file.Kind == kind);

    /// <summary>The file of a kind and id; null when there is none or more than one. Nothing is reported.</summary>
    public PlantFile? Find(FileKind kind, string id) => _byId[(kind, id)] is var found && found.Take(2).Count() == 1 ? found.First() : null;

    /// <summary>The file that somebody refers to by id, or null, which has then been reported.</summary>
    /// <param name="place">Where the id was written.</param>
    internal PlantFile? Find(FileKind kind, string id, SourcePlace place)
    {
        var found = _byId[(kind, id)].ToList();
        if (found.Count > 1) ReportDuplicate(found);
        if (found.Count > 0) return found[0];

        var others = FileKinds.All.Where(other => other != kind && _byId[(other, id)].Any()).Select(other => other.OneWord()).ToList();
        if (others.Count > 0)
        {
            Report.Add(PlantCodes.WrongKind, place, $"'{id}' is the id of {others[0]}, {kind.OneWord()} is wanted");
            return null;
        }

        var near = Nearest.Of(id, Of(kind).Select(file => file.Id));
        Report.Add(PlantCodes.UnknownFile, place, $"the plant has no {kind.Word()} {Shown.Quoted(id)}", near is null ? null : $"did you mean '{near}'?");
        return null;
    }

    /// <summary>Reports every id that several files of one kind share.</summary>
    internal void ReportDuplicates()
    {
        foreach (var same in _byId)
        {
            if (same.Key.Kind is not null && same.Skip(1).Any()) ReportDuplicate([.. same]);
        }
    }

    private void ReportDuplicate(IReadOnlyList<PlantFile> same)
    {
        foreach (var further in same.Skip(1))
        {
            Report.Add(PlantCodes.DuplicateId, further.IdPlace, $"the {further.Kind!.Value.Word()} id '{further.Id}' is already used at {same[0].IdPlace}");
        }
    }
}
