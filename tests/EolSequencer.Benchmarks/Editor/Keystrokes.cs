using System.Diagnostics;
using EolSequencer.Language.Editing;

namespace EolSequencer.Benchmarks.Editor;

/// <summary>Somebody types in one place of a file.</summary>
/// <param name="what">What is typed, for people.</param>
/// <param name="before">What stands before the place, near the end of the file; nothing: its very first character.</param>
/// <param name="first">What stands there at first.</param>
/// <param name="text">What stands there after the keystroke with this number.</param>
internal sealed class Keystrokes(string what, string before, string first, Func<int, string> text)
{
    private readonly List<double> _times = [];
    private readonly List<double> _work = [];
    private string _typed = first;

    /// <returns>How many findings there are.</returns>
    public int Type(PlantEditor editor, string path)
    {
        var (start, end) = Place(editor.TextOf(path)!);
        _typed = text(_times.Count);
        var (begun, worked) = (Stopwatch.GetTimestamp(), ThreadWork.SoFar);
        editor.Change(path, new TextRange(start, end), _typed);
        var findings = editor.Check(path).Count;
        _times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
        _work.Add((ThreadWork.SoFar - worked).TotalMilliseconds);
        return findings;
    }

    /// <summary>The times, and beside them what the processor did for this thread meanwhile.</summary>
    public void Print()
    {
        Print(_times, $"{what}, keystroke to findings");
        Print(_work, $"{what}, work of the thread");
    }

    private static void Print(IEnumerable<double> times, string name)
    {
        var ordered = times.Order().ToList();
        Figures.Print($"{name}, p50", ordered[ordered.Count / 2], "ms", "0.0");
        Figures.Print($"{name}, p95", ordered[ordered.Count * 95 / 100], "ms", "0.0");
        Figures.Print($"{name}, max", ordered[^1], "ms", "0.0");
    }

    private (TextPosition Start, TextPosition End) Place(string written)
    {
        var known = before + _typed;
        var at = before.Length == 0 ? 0 : written.LastIndexOf(known, StringComparison.Ordinal) + before.Length;
        return (PositionOf(written, at), PositionOf(written, at + _typed.Length));
    }

    private static TextPosition PositionOf(string written, int at)
    {
        var head = written.AsSpan(0, at);
        return new TextPosition(head.Count('\n'), at - (head.LastIndexOf('\n') + 1));
    }
}
