using System.Collections.Immutable;
using EolSequencer.Language.Binding.Advice;
using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Loading;

/// <summary>One load of one sequence: the passes in their order.</summary>
internal sealed class SequenceLoad
{
    private readonly PlantFolder _folder;
    private readonly Report _report;
    private readonly ExpressionBatch _batch;
    private readonly List<PlantFile> _files = [];
    private readonly PlaceBook _places = new();

    private SequenceLoad(PlantFolder folder, ExpressionCache cache)
    {
        _folder = folder;
        _report = folder.Report;
        _batch = new ExpressionBatch(_report, cache);
    }

    /// <summary>What a load made.</summary>
    /// <param name="Files">Every file it read, the sequence's own first.</param>
    /// <param name="UsedLimits">The limits of the vehicle type that its steps judge by.</param>
    /// <param name="Plan">For every combination of options; null when there was an error, or no advice was asked for.</param>
    internal sealed record Loaded(CheckedSequence Sequence, Plant Plant, IReadOnlyList<PlantFile> Files, IReadOnlySet<string> UsedLimits, SequencePlan? Plan);

    /// <summary>The sequence; null: already reported. With errors in the report it must not be used.</summary>
    /// <param name="withAdvice">Whether to look also for what is no fault but probably not meant.</param>
    public static Loaded? Run(PlantFile file, PlantFolder folder, ExpressionCache cache, bool withAdvice = false) =>
        new SequenceLoad(folder, cache).Run(file, withAdvice);

    private Loaded? Run(PlantFile file, bool withAdvice)
    {
        if (Read(file) is not { } root || SequenceHead.Read(root, _report) is not { } head) return null;
        if (Context(head) is not { } context || SequenceBinder.Bind(head, context) is not { } bound) return null;

        // An author hears of faults in expressions also when there are others, but what builds on them waits.
        if (!_batch.Compile() || _report.HasErrors || _files.Exists(used => used.HasErrors)) return null;
        var instances = ReachChecks.Run(bound, head.VehicleType.Place, context.Vehicle.Limits, _places, _report);
        var plan = withAdvice && instances is not null && !_report.HasErrors ? AdviceChecks.Run(bound, instances, context, _report) : null;
        var sequence = bound with { CompiledHash = _batch.Hash, Sources = [.. _files.Select(used => used.Copy).OfType<SourceCopy>(), .. context.Vehicle.Tables] };
        return new Loaded(sequence, context.Plant, _files, context.UsedLimits, plan);
    }

    /// <summary>
    /// What the sequence builds on; null when there is a fault in it. The sequence itself is then not bound: most of what
    /// would be found would be consequences.
    /// </summary>
    private BindingContext? Context(SequenceHead head)
    {
        var own = new Report();
        var vehicle = Root(FileKind.VehicleType, head.VehicleType) is { } typeRoot ? VehicleTypeBinder.Bind(typeRoot, _batch, own, _folder.Texts) : null;
        var plant = _folder.PlantFile is { } plantFile && Read(plantFile) is { } plantRoot ? PlantBinder.Bind(plantRoot, vehicle?.Type, _batch, own) : null;
        var roles = ImmutableSortedDictionary.CreateBuilder<string, DeviceKind>(StringComparer.Ordinal);
        foreach (var (role, id) in head.Devices)
        {
            if (Kind(id, vehicle, own) is { } kind) roles[role] = kind;
        }

        foreach (var finding in own.InOrder) _report.Add(finding);
        var isWhole = !own.HasErrors && vehicle is not null && plant is not null && roles.Count == head.Devices.Length;
        if (isWhole) return new BindingContext(_folder, plant!, vehicle!, roles.ToImmutable(), _batch, _report, _places, _files);
        _batch.Compile();
        return null;
    }

    private DeviceKind? Kind(YamlScalar id, BoundVehicleType? vehicle, Report own)
    {
        if (id.Text == DeviceKind.VehicleBus) return vehicle?.Type.Bus;
        return Root(FileKind.DeviceKind, id) is { } root ? DeviceKindBinder.Bind(root, own) : null;
    }

    private YamlNode? Root(FileKind kind, YamlScalar id) => _folder.Find(kind, id.Text, id.Place) is { } file ? Read(file) : null;

    private YamlNode? Read(PlantFile file)
    {
        if (!_files.Contains(file)) _files.Add(file);
        return file.Root;
    }
}
