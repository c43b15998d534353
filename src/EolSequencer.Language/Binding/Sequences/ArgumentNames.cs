using System.Collections.Immutable;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>The loop names and parameters in force, with their types.</summary>
internal sealed class ArgumentNames
{
    private readonly VehicleType _vehicle;

    private ArgumentNames(VehicleType vehicle, ImmutableSortedDictionary<string, ValueShape> shapes)
    {
        _vehicle = vehicle;
        Shapes = shapes;
        Static = new ExpressionNames { Vehicle = vehicle, Arguments = shapes };
    }

    public static ArgumentNames None(VehicleType vehicle) => new(vehicle, ImmutableSortedDictionary.Create<string, ValueShape>(StringComparer.Ordinal));

    public ImmutableSortedDictionary<string, ValueShape> Shapes { get; }

    /// <summary>What an expression may name that is decided before the first step; always the same object.</summary>
    public ExpressionNames Static { get; }

    public ArgumentNames With(string name, ValueShape shape) => new(_vehicle, Shapes.SetItem(name, shape));

    /// <summary>The values that a name can have as an index; empty when it is no index.</summary>
    public ImmutableArray<string> ValuesOf(string name) => Shapes.TryGetValue(name, out var shape) ? shape.Choices : [];
}
