using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Loading;

/// <summary>Loads what holds for a plant whatever the vehicle: its route then has no conditions.</summary>
public static class PlantLoader
{
    /// <summary>The plant above a file or folder; null when there is an error.</summary>
    /// <param name="path">A file or folder of the plant, as the user typed it.</param>
    public static (Plant? Plant, IReadOnlyList<Diagnostic> Diagnostics) Load(string path)
    {
        var report = new Report();
        var root = PlantFolder.Find(path, report)?.PlantFile?.Root;
        var plant = root is null ? null : PlantBinder.Bind(root, null, new ExpressionBatch(report, ExpressionCache.None), report);
        return (report.HasErrors ? null : plant, report.InOrder);
    }
}
