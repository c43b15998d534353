using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Editing.Names;

/// <summary>What the files of a plant describe, each read again when its text changes; one that cannot be read just now is as it was before.</summary>
internal sealed class PlantBindings
{
    private readonly Dictionary<string, (SourceText? Text, object? Bound)> _known = new(StringComparer.Ordinal);

    public BoundVehicleType? VehicleType(PlantFile? file) => Of(file, root => VehicleTypeBinder.Bind(root, Batch(), new Report()));

    public DeviceKind? DeviceKind(PlantFile? file) => Of(file, root => DeviceKindBinder.Bind(root, new Report()));

    public Plant? Plant(PlantFile? file) => Of(file, root => PlantBinder.Bind(root, null, Batch(), new Report()));

    public FragmentFile? Fragment(PlantFile? file) => Of(file, root => FragmentFile.Open(root, new Report()));

    private T? Of<T>(PlantFile? file, Func<YamlNode, T?> bind) where T : class
    {
        if (file is null) return null;
        var (text, bound) = _known.GetValueOrDefault(file.Path);
        if (!ReferenceEquals(text, file.Text) || bound is not T) _known[file.Path] = (file.Text, bound = (file.Root is { } root ? bind(root) : null) ?? bound);
        return bound as T;
    }

    private static ExpressionBatch Batch() => new(new Report(), ExpressionCache.None);
}
