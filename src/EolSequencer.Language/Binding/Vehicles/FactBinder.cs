using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads what an order says beside the options.</summary>
internal static class FactBinder
{
    /// <summary>The keys of a fact.</summary>
    public static MapShape Shape { get; } = new(
        "a fact of the order",
        [],
        [.. Shapes.Keys, new("by", Forms.Either(Forms.Word(VehicleParts.AllUnits), Ids.IndexList), "index values, or ecus: one value for each control unit")],
        Shapes.EitherOf);

    /// <param name="units">Names of the control units, for <c>by: ecus</c>.</param>
    public static ImmutableArray<OrderFact> Bind(YamlMap? map, ImmutableArray<string> units, Report report)
    {
        var facts = ImmutableArray.CreateBuilder<OrderFact>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a fact of the order", report);
            if (MapReader.Open(value, Shape, report) is not { } keys || Shapes.Read(keys) is not { } shape || name is null) continue;
            facts.Add(new OrderFact(name, shape, [.. Indexes(keys, units).Select(index => new IndexValue(index, null))]));
        }

        return facts.ToImmutable();
    }

    /// <summary>The same facts, each index over control units with the vehicles that have the unit.</summary>
    public static ImmutableArray<OrderFact> WithUnits(ImmutableArray<OrderFact> facts, ImmutableArray<ControlUnit> units)
    {
        var byName = units.ToDictionary(unit => unit.Name, StringComparer.Ordinal);
        return [.. facts.Select(fact => fact with { Indexes = [.. fact.Indexes.Select(index => new IndexValue(index.Value, byName.GetValueOrDefault(index.Value)?.When))] })];
    }

    private static ImmutableArray<string> Indexes(MapReader keys, ImmutableArray<string> units) => keys.Find("by") switch
    {
        null => [],
        YamlScalar { Text: VehicleParts.AllUnits } => units,
        var node => Ids.IndexValues(node, "'by'", keys.Report) ?? [],
    };
}
