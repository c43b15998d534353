using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

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
        return ResultOf(loaded, report);
    }

    /// <summary>Loads a sequence from the texts that a record keeps of it; needs no file. Pictures are not kept and not looked for.</summary>
    /// <param name="copies">Every file the sequence was made from.</param>
    /// <param name="sequence">Id of the sequence.</param>
    /// <param name="cache">Where compiled expressions are kept.</param>
    public static LoadResult LoadRecorded(IEnumerable<SourceCopy> copies, string sequence, ExpressionCache cache)
    {
        var report = new Report();
        var folder = RecordedTexts.Plant(copies, report);
        var loaded = folder.Find(FileKind.Sequence, sequence, SourcePlace.None) is { } file ? SequenceLoad.Run(file, folder, cache) : null;
        return ResultOf(loaded, report);
    }

    /// <summary>Loads a sequence, and plans it for every combination of options.</summary>
    public static PlanResult Plan(string path, ExpressionCache cache)
    {
        var report = new Report();
        var loaded = PlantFiles.Open(path, FileKind.Sequence, report) is { } found ? SequenceLoad.Run(found.File, found.Folder, cache, withAdvice: true) : null;
        return new PlanResult(report.HasErrors ? null : loaded?.Plan, report.InOrder, report.LeftOut);
    }

    private static LoadResult ResultOf(SequenceLoad.Loaded? loaded, Report report)
    {
        var isReady = loaded is not null && !report.HasErrors;
        return new LoadResult(isReady ? loaded!.Sequence : null, isReady ? loaded!.Plant : null, report.InOrder, report.LeftOut);
    }
}
