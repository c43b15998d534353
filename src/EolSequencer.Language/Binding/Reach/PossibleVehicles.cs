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
    /// <summary>The most combinations that are all tried; of more, a pairwise cover, filled up to this many with drawn ones.</summary>
    public const int Most = 4096;

    private const int MostUndecided = 256;

    private readonly ImmutableArray<Dimension> _dimensions;
    private readonly ImmutableArray<ImmutableDictionary<string, Value>> _vehicles;
    private readonly Dictionary<(Expression When, Arguments Arguments), Reached> _decided = [];

    private PossibleVehicles(ImmutableArray<Dimension> dimensions, ImmutableArray<ImmutableDictionary<string, Value>> vehicles, int planned, long combinations)
    {
        Planned = planned;
        _dimensions = dimensions;
        _vehicles = vehicles;
        Combinations = combinations;
        var all = VehicleSet.Where(vehicles.Length, static _ => true);
        All = new Reached(all, all);
    }

    /// <summary>An option or fact with the values it can have.</summary>
    private sealed record Dimension(string Name, ImmutableArray<Value> Values);

    /// <summary>How many vehicles are tried.</summary>
    public int Count => _vehicles.Length;

    /// <summary>True when there are more combinations than are tried.</summary>
    public bool IsSample => Combinations > Most;

    /// <summary>All combinations of values, the impossible ones included; exact up to <see cref="Most"/>.</summary>
    public long Combinations { get; }

    /// <summary>How many of them, from the first on, a plan is made for: all, or of a sample those that show every two values together.</summary>
    public int Planned { get; }

    /// <summary>The options, and the facts that were asked for, in written order.</summary>
    public IEnumerable<string> Names => _dimensions.Select(dimension => dimension.Name);

    /// <summary>The value that one vehicle has of an option or fact.</summary>
    public Value ValueOf(int number, string name) => _vehicles[number][name];

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
        var product = dimensions.Aggregate(1L, (sofar, dimension) => sofar > Most ? sofar : sofar * dimension.Values.Length);
        if (product <= Most)
        {
            ImmutableArray<ImmutableDictionary<string, Value>> all = [.. Counted(dimensions, (int)product).Where(vehicle => !IsImpossible(type, vehicle))];
            return new PossibleVehicles(dimensions, all, all.Length, product);
        }

        var cover = Covering(type, dimensions);
        return new PossibleVehicles(dimensions, [.. cover, .. Drawn(dimensions, Most - cover.Count).Where(vehicle => !IsImpossible(type, vehicle))], cover.Count, product);
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

    private static List<ImmutableDictionary<string, Value>> Covering(VehicleType type, ImmutableArray<Dimension> dimensions)
    {
        var rows = PairwiseCover.Rows([.. dimensions.Select(dimension => dimension.Values.Length)], row => IsImpossible(type, Vehicle(row)));
        return [.. rows.Select(Vehicle)];

        ImmutableDictionary<string, Value> Vehicle(int[] row)
        {
            var vehicle = ImmutableDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
            for (var at = 0; at < row.Length; at++)
            {
                if (row[at] != PairwiseCover.Open) vehicle[dimensions[at].Name] = dimensions[at].Values[row[at]];
            }

            return vehicle.ToImmutable();
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
    private static IEnumerable<ImmutableDictionary<string, Value>> Drawn(ImmutableArray<Dimension> dimensions, int count)
    {
        var state = 0x9E3779B97F4A7C15UL;
        for (var number = 0; number < count; number++)
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
