using EolSequencer.Language.Editing;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Editing;

/// <summary>The good test plant with one sequence in a window, in which ‸ stands for the caret.</summary>
internal sealed class EditedPlant : IDisposable
{
    private const string Head = """
        sequence: probe
        revision: 1
        vehicle-type: teal
        station-kind: startup
        devices: { bus: vehicle-bus, meter: supply-meter }
        parameters: { side: { one-of: [left, right], default: left } }

        """;

    private readonly TestPlant _plant = new();
    private string _path = "";
    private TextPosition _caret;

    public PlantEditor Editor { get; } = new();

    public string Root => _plant.Root;

    /// <summary>A sequence whose head is given, from behind its parameters on.</summary>
    public static EditedPlant With(string steps) => File("sequences/probe.yaml", Head + steps.ReplaceLineEndings("\n"));

    /// <summary>A file as a whole.</summary>
    public static EditedPlant File(string path, string text)
    {
        var plant = new EditedPlant { _path = "" };
        plant._path = plant._plant.PathOf(path);
        var at = text.IndexOf('‸');
        plant._caret = at < 0 ? default : new TextPosition(text[..at].Count(letter => letter == '\n'), at - (text.LastIndexOf('\n', Math.Max(at - 1, 0)) + 1));
        plant.Editor.SetText(plant._path, text.Replace("‸", "", StringComparison.Ordinal));
        return plant;
    }

    public string PathOf(string relative) => _plant.PathOf(relative);

    public IReadOnlyList<Proposal> Proposals => Editor.Propose(_path, _caret);

    /// <summary>The texts proposed, without the colon and blank behind keys.</summary>
    public List<string> Proposed => [.. Proposals.Select(one => one.Text.TrimEnd(' ', ':'))];

    public Explanation? Explained => Editor.Explain(_path, _caret);

    /// <summary>The file below the plant and the text of its line from the place on.</summary>
    public (string Path, string Text)? Definition
    {
        get
        {
            if (Editor.FindDefinition(_path, _caret) is not { } found) return null;
            var text = found.Path == _path ? null : System.IO.File.ReadAllLines(found.Path)[found.Range.Start.Line];
            var name = text is null ? $"{found.Range.Start.Line}" : text[found.Range.Start.Column..found.Range.End.Column];
            return (Path.GetRelativePath(Root, found.Path).Replace('\\', '/'), name);
        }
    }

    public void Dispose() => _plant.Dispose();
}
