using System.Collections.Immutable;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What stays the same while one sequence is bound, its fragments included.</summary>
/// <param name="Roles">The device roles of the sequence.</param>
/// <param name="Places">Filled while steps are bound.</param>
/// <param name="Files">Every file the sequence is made from; fragments join when they are used.</param>
internal sealed record BindingContext(
    PlantFolder Folder,
    Plant Plant,
    BoundVehicleType Vehicle,
    ImmutableSortedDictionary<string, DeviceKind> Roles,
    ExpressionBatch Batch,
    Report Report,
    PlaceBook Places,
    List<PlantFile> Files)
{
    /// <summary>The limits that steps judge by.</summary>
    public HashSet<string> UsedLimits { get; } = new(StringComparer.Ordinal);

    /// <summary>Notes that the sequence is also made from a file.</summary>
    public void Use(PlantFile file)
    {
        if (!Files.Contains(file)) Files.Add(file);
    }
}
