using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>
/// Every vehicle of a type that can be ordered, by its options: all combinations but the impossible ones. Facts of the
/// order that have a closed list of values join in when a condition asks for them.
/// </summary>
internal sealed class PossibleVehicles
{
    /// <summary>The most combinations that are all tried; of more, this many are drawn.</summary>
    public const int Most = 4096;

    private const int MostUndecided = 256;

    private readonly ImmutableArray<Dimension> _dimensions;
    private readonly ImmutableArray<ImmutableDictionary<string, Value>> _vehicles;
    private readonly Dictionary<(Expression When, Arguments Arguments), Reached> _decided = [];

    private PossibleVehicles(ImmutableArray<Dimension> dimensions, ImmutableArray<ImmutableDictionary<string, Value>> vehicles, bool isSample)
    {
        _dimensions = dimensions;
        _vehicles = vehicles;
        IsSample = isSample;
        var all = VehicleSet.Where(vehicles.Length, static _ => true);
        All = new Reached(all, all);
    }

    /// <summary>An option or fact with the values it can have.</summary>
    private sealed record Dimension(string Name, ImmutableArray<Value> Values);

    /// <summary>How many vehicles are tried.</summary>
    public int Count => _vehicles.Length;

    /// <summary>True when there are more combinations than are tried.</summary>
    public bool IsSample { get; }

    /// <summary>All of them.</summary>
    public Reached All { get; }

    /// <param name="type">A type whose expressions are compiled.</param>
    /// <param name="facts">Names of the order facts that conditions ask for.</param>
    public static PossibleVehicles Of(VehicleType type, IReadOnlySet<string> facts)
    {
        ImmutableArray<Dimension> dimensions =
        [
            .. type.Options.Select(option => new Dimension(option.Name, ValuesOf(option.Shape))),
            .. type.OrderFacts
                .Where(fact => facts.Contains(fact.Name) && fact.Indexes.IsEmpty && !ValuesOf(fact.Shape).IsEmpty)
                .Select(fact => new Dimension(VehicleScope.FactName(fact.Name), ValuesOf(fact.Shape))),
        ];
        var product = dimensions.Aggregate(1m, (sofar, dimension) => sofar * dimension.Values.Length);
        var isSample = product > Most;
        var choices = isSample ? Drawn(dimensions) : Counted(dimensions, (int)product);
        ImmutableArray<ImmutableDictionary<string, Value>> possible = [.. choices.Where(vehicle => !IsImpossible(type, vehicle))];
        return new PossibleVehicles(dimensions, possible, isSample);
    }

    /// <summary>The vehicles for which a condition holds, with loop names and parameters as they are in one instance.</summary>
    public Reached Where(Expression? when, Arguments arguments)
    {
        if (when is null) return All;
        if (_decided.TryGetValue((when, arguments), out var known)) return known;

        var answers = Answers(when, arguments);
        var reached = new Reached(
            VehicleSet.Where(Count, number => answers[number] == true), VehicleSet.Where(Count, number => answers[number] != false));
        return _decided[(when, arguments)] = reached;
    }

    /// <summary>A value that does not depend on the vehicle, or null.</summary>
    public static Value? Known(Operand operand, Arguments arguments)
    {
        if (operand is Operand.Constant constant) return constant.Value;
        try
        {
            return ((Operand.Computed)operand).Expression.Evaluate(new VehicleScope(ImmutableDictionary<string, Value>.Empty, arguments));
        }
        catch (Exception fault) when (fault is Undecided or ExpressionFault)
        {
            return null;
        }
    }

    /// <summary>One vehicle in words: <c>drive awd, powertrain petrol, tow yes</c>.</summary>
    public string Describe(int number) =>
        string.Join(", ", _dimensions.Select(dimension => $"{dimension.Name} {_vehicles[number][dimension.Name]}"));

    // A condition that keeps asking for what nobody knows yet is not worth an exception for each of thousands of vehicles.
    private bool?[] Answers(Expression when, Arguments arguments)
    {
        var answers = new bool?[Count];
        var undecided = 0;
        for (var number = 0; number < Count && undecided < MostUndecided; number++)
        {
            answers[number] = Decide(when, new VehicleScope(_vehicles[number], arguments));
            if (answers[number] is null) undecided++;
        }

        return answers;
    }

    private static bool? Decide(Expression when, VehicleScope scope)
    {
        try
        {
            return when.IsTrue(scope);
        }
        catch (Exception fault) when (fault is Undecided or ExpressionFault)
        {
            return null;
        }
    }

    private static bool IsImpossible(VehicleType type, ImmutableDictionary<string, Value> vehicle)
    {
        var scope = new VehicleScope(vehicle, Arguments.None);
        return type.Impossible.Any(condition => Decide(condition, scope) == true);
    }

    private static ImmutableArray<Value> ValuesOf(ValueShape shape) => shape.Kind == ValueKind.Truth
        ? [TruthValue.No, TruthValue.Yes]
        : [.. shape.Choices.Select(choice => new TextValue(choice))];

    private static IEnumerable<ImmutableDictionary<string, Value>> Counted(ImmutableArray<Dimension> dimensions, int product)
    {
        for (var number = 0; number < product; number++)
        {
            var rest = number;
            var vehicle = ImmutableDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
            foreach (var dimension in dimensions.Reverse())
            {
                vehicle[dimension.Name] = dimension.Values[rest % dimension.Values.Length];
                rest /= dimension.Values.Length;
            }

            yield return vehicle.ToImmutable();
        }
    }

    // The same draw every time: two loads of one file never differ in what they find.
    private static IEnumerable<ImmutableDictionary<string, Value>> Drawn(ImmutableArray<Dimension> dimensions)
    {
        var state = 0x9E3779B97F4A7C15UL;
        for (var number = 0; number < Most; number++)
        {
            var vehicle = ImmutableDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
            foreach (var dimension in dimensions)
            {
                state ^= state << 13;
                state ^= state >> 7;
                state ^= state << 17;
                vehicle[dimension.Name] = dimension.Values[(int)(state % (ulong)dimension.Values.Length)];
            }

            yield return vehicle.ToImmutable();
        }
    }
}
