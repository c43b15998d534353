using System.Diagnostics;
using System.Globalization;
using EolSequencer.Benchmarks.Plants;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Editing;

namespace EolSequencer.Benchmarks.Editor;

/// <summary>
/// Somebody types in a long sequence: from each keystroke to the findings of the file, as <c>eol serve-language</c> gets
/// them, and what is kept in memory from edit to edit.
/// </summary>
internal static class EditorBenchmark
{
    public static int Run(string[] args)
    {
        var isSmall = args.Contains("small");
        using var plant = new DemoCopy();
        var path = LongSequence.Write(plant, isSmall ? 800 : 2_500);
        var editor = new PlantEditor();
        editor.SetText(path, File.ReadAllText(path));

        var begun = Stopwatch.GetTimestamp();
        var first = editor.Check(path);
        Figures.Print("lines", File.ReadAllLines(path).Length);
        Figures.Print("first findings", Stopwatch.GetElapsedTime(begun).TotalMilliseconds, "ms", "0");
        foreach (var finding in first.Where(one => one.Severity == Severity.Error)) throw new InvalidOperationException(finding.ToString());

        var places = Places();
        Round(places, editor, path, isSmall ? 1 : 10);
        PrintMemory("before the edits");
        var rounds = isSmall ? 6 : 250;
        var findings = Round(places = Places(), editor, path, rounds);
        foreach (var place in places) place.Print();
        PrintMemory(string.Create(CultureInfo.InvariantCulture, $"after {rounds * places.Length} edits"));
        Figures.Print("findings in all", findings);
        Figures.PrintMachine();
        GC.KeepAlive(editor);
        return 0;
    }

    // Numbers and expressions are new at every keystroke; every tenth expression ends in half a name.
    private static Keystrokes[] Places() =>
    [
        new("a number", "expect: 240 .. ", "250 kPa", number => string.Create(CultureInfo.InvariantCulture, $"250.{number + 1:000} kPa")),
        new("an expression", "await: edges(bus.turn_lamp[\"left\"]) >= ", "4", number => number % 10 == 9 ? "bus.turn_lam" : (number + 5).ToString(CultureInfo.InvariantCulture)),
        new("a key", "require: { that: bus.gateway_awake, ", "else", number => "else"[..(number % 4 + 1)]),
        new("a line at the top", "", "", number => number % 2 == 0 ? "#\n" : ""),
    ];

    private static long Round(Keystrokes[] places, PlantEditor editor, string path, int times)
    {
        var text = editor.TextOf(path)!;
        var findings = 0L;
        for (var time = 0; time < times; time++)
        {
            foreach (var place in places) findings += place.Type(editor, path);
        }

        editor.SetText(path, text);
        editor.Check(path);
        return findings;
    }

    /// <summary>What is alive after a whole collection; code of expressions goes with the last that refers to it.</summary>
    private static void PrintMemory(string when)
    {
        for (var time = 0; time < 3; time++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        Figures.Print($"live memory {when}", GC.GetTotalMemory(forceFullCollection: true) / 1048576.0, "MiB", "0.00");
        Figures.Print($"code of expressions loaded {when}", AppDomain.CurrentDomain.GetAssemblies().Count(one => one.IsCollectible), "times");
    }
}
