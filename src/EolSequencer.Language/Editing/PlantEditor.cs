using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Editing.Names;
using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Editing;

/// <summary>
/// Serves an editor: holds the texts in its windows in front of the files on disk, and answers what is wrong, what could be
/// written, what a word means and where it is described. Knows nothing of how an editor asks.
/// </summary>
/// <remarks>
/// Texts may be set while a check runs; everything else is asked by one at a time. Paths are full paths. A file is checked
/// by itself in time for a keystroke, and with its whole plant when there is time.
/// </remarks>
/// <param name="knowledge">What is known of rehearsals; null: nothing is said about it.</param>
public sealed class PlantEditor(IRehearsalKnowledge? knowledge = null)
{
    private readonly EditorTexts _texts = new();
    private readonly PlantBindings _bindings = new();
    private readonly Dictionary<string, LiveCode> _code = new(StringComparer.Ordinal);

    /// <summary>Takes up the text of a window, or another text of it.</summary>
    public void SetText(string path, string text) => _texts.Set(path, text);

    /// <summary>Puts other characters in the place of some. A range beyond the text ends with it. Nothing happens to a file that is not open.</summary>
    public void Change(string path, TextRange range, string text)
    {
        if (_texts.Find(path) is not { } old) return;
        var lines = new LineTable(old);
        var start = OffsetOf(lines, old, range.Start);
        var end = Math.Max(start, OffsetOf(lines, old, range.End));
        _texts.Set(path, string.Concat(old.AsSpan(0, start), text, old.AsSpan(end)));
    }

    /// <summary>The window was closed: the file on disk counts again.</summary>
    public void Close(string path)
    {
        _texts.Close(path);
        _code.Remove(path);
    }

    /// <summary>The text in the window; null when the file is not open.</summary>
    public string? TextOf(string path) => _texts.Find(path);

    /// <summary>True while a window holds the file.</summary>
    public bool IsOpen(string path) => _texts.Find(path) is not null;

    /// <summary>Everything that is wrong in one file as far as a check of this file tells, by line and column.</summary>
    public IReadOnlyList<Diagnostic> Check(string path)
    {
        var report = new Report();
        Check(path, report, _ => path, check => check.AddFile(path), static () => true);
        return [.. report.InOrder.Where(one => PathOf(one.Place) == path)];
    }

    /// <summary>Checks the whole plant around a file.</summary>
    /// <param name="goesOn">Asked between files; false gives up, because there is something better to do.</param>
    /// <returns>What is wrong, by the full path of the file; null when the check was given up.</returns>
    public ILookup<string, Diagnostic>? CheckPlant(string path, Func<bool> goesOn)
    {
        var report = new Report();
        var isComplete = Check(path, report, root => root, check => check.AddFolder(PlantFolder.RootOf(path)!), goesOn);
        return isComplete ? report.InOrder.ToLookup(one => PathOf(one.Place)) : null;
    }

    /// <summary>What could be written at a place, also in a text that is not whole yet.</summary>
    public IReadOnlyList<Proposal> Propose(string path, TextPosition position) =>
        SpotAt(path, position) is { } found ? Completion.At(found.Spot, found.Range) : [];

    /// <summary>What the word at a place means; null when there is nothing to say.</summary>
    public Explanation? Explain(string path, TextPosition position)
    {
        if (SpotAt(path, position) is not { } found) return null;
        var caret = found.Spot.Caret;
        if (Lookup.Key(caret) is { } key) return new Explanation($"{key.Name}: {key.Meaning}", FormTexts.Of(key.Form), found.Range(caret.Text.Start, caret.Text.End));
        return Lookup.Name(found.Spot) is var (thing, start, end)
            ? new Explanation($"{thing.Name}: {thing.Detail}", thing.Text.Length == 0 ? [] : thing.Text.Split('\n'), found.Range(start, end))
            : null;
    }

    /// <summary>Where what the word at a place names is described: a full path and the characters of its name; null when nowhere.</summary>
    public (string Path, TextRange Range)? FindDefinition(string path, TextPosition position)
    {
        if (SpotAt(path, position) is not { } found || Lookup.Name(found.Spot) is not var (thing, _, _) || thing.Place is not { } place) return null;
        return (PathOf(place), TextRange.Of(place));
    }

    private bool Check(string path, Report report, Func<string, string> owner, Action<PlantCheck> add, Func<bool> goesOn)
    {
        if (PlantFolder.Find(path, report, _texts) is not { } folder) return true;
        if (!_code.TryGetValue(owner(folder.Root), out var code)) code = _code[owner(folder.Root)] = new LiveCode();
        var check = new PlantCheck(folder, ExpressionCache.InMemory(code), knowledge);
        add(check);
        if (!check.Run(goesOn)) return false;
        if (folder.At(path) is { Kind: FileKind.VehicleType } type) _bindings.VehicleType(type); // for when it cannot be read later
        code.EndCheck();
        return true;
    }

    private (Spot Spot, Func<int, int, TextRange> Range)? SpotAt(string path, TextPosition position)
    {
        if (_texts.Find(path) is not { } text) return null;
        var lines = new LineTable(text);
        if (Caret.Find(text, OffsetOf(lines, text, position)) is not { } caret) return null;
        if (PlantFolder.Find(path, new Report(), _texts) is not { } folder || folder.At(path) is not { } file) return null;
        return (new Spot(caret, file, folder, _bindings), (start, end) => new TextRange(PositionOf(lines, start), PositionOf(lines, end)));
    }

    private static string PathOf(SourcePlace place) => place.File.Length == 0 ? "" : Path.GetFullPath(place.File);

    private static int OffsetOf(LineTable lines, string text, TextPosition position)
    {
        if (position.Line < 0) return 0;
        if (position.Line >= lines.Count) return text.Length;
        return Math.Clamp(lines.StartOf(position.Line + 1) + Math.Max(position.Column, 0), lines.StartOf(position.Line + 1), lines.EndOf(position.Line + 1));
    }

    private static TextPosition PositionOf(LineTable lines, int offset)
    {
        var line = lines.LineOf(offset);
        return new TextPosition(line - 1, offset - lines.StartOf(line));
    }
}
