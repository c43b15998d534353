using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>Loads a sequence with everything it is made of.</summary>
public static class SequenceLoader
{
    /// <summary>Reads, binds, compiles and checks a sequence. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="path">The sequence's file, as the user typed it.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    public static LoadResult Load(string path, ExpressionCache cache)
    {
        var report = new Report();
        var loaded = PlantFiles.Open(path, FileKind.Sequence, report) is { } found ? SequenceLoad.Run(found.File, found.Folder, cache) : null;
        var isReady = loaded is not null && !report.HasErrors;
        return new LoadResult(isReady ? loaded!.Sequence : null, isReady ? loaded!.Plant : null, report.InOrder, report.LeftOut);
    }

    /// <summary>Loads a sequence, and plans it for every combination of options.</summary>
    public static PlanResult Plan(string path, ExpressionCache cache)
    {
        var report = new Report();
        var loaded = PlantFiles.Open(path, FileKind.Sequence, report) is { } found ? SequenceLoad.Run(found.File, found.Folder, cache, withAdvice: true) : null;
        return new PlanResult(report.HasErrors ? null : loaded?.Plan, report.InOrder, report.LeftOut);
    }
}
