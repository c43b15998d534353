using System.Collections.Immutable;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Which control unit a channel or action speaks to.</summary>
/// <param name="Unit">Its name; null when the index names it, or all fitted ones are meant.</param>
/// <param name="Indexes">The control units that an index chooses from; empty when none does.</param>
/// <param name="When">The vehicles that have the one unit; null: all.</param>
internal sealed record UnitChoice(string? Unit, ImmutableArray<IndexValue> Indexes, Expression? When)
{
    /// <summary>The key that says who is asked.</summary>
    public static MapKey From { get; } = new("from", Forms.Named(Subject.ControlUnit), "control unit that is asked; ecus: all fitted, or the one that the index of 'by' names");

    /// <summary>The key that makes control units the index.</summary>
    public static MapKey By { get; } = new(
        "by", Forms.Either(Forms.Word(VehicleParts.AllUnits), Forms.List(Forms.Named(Subject.ControlUnit))), "one value for each control unit: ecus, or the listed ones");

    /// <summary>True when neither a name nor an index says which unit is meant.</summary>
    public bool IsAll => Unit is null && Indexes.IsEmpty;

    /// <summary>Reads <c>from</c> and <c>by</c>; null: already reported.</summary>
    public static UnitChoice? Read(MapReader keys, VehicleParts parts)
    {
        if (keys.Text("from") is not { } from) return null;
        if (from.Text != VehicleParts.AllUnits)
        {
            if (keys.Has("by"))
            {
                parts.Report.Add(VehicleCodes.WhichUnit, keys.PlaceOf("by"), $"'by' chooses between control units, but 'from' names '{from.Text}'", "write  from: ecus");
                return null;
            }

            return parts.Unit(from.Text, from.Place) is { } unit ? new UnitChoice(unit.Name, [], unit.When) : null;
        }

        return keys.Find("by") switch
        {
            null => new UnitChoice(null, [], null),
            YamlScalar { Text: VehicleParts.AllUnits } => new UnitChoice(null, parts.IndexOver(parts.Units), null),
            var node => Chosen(node, parts) is { Count: > 0 } units ? new UnitChoice(null, parts.IndexOver(units), null) : null,
        };
    }

    private static List<ControlUnit> Chosen(YamlNode node, VehicleParts parts)
    {
        var units = new List<ControlUnit>();
        foreach (var item in node.AsList("'by'", parts.Report) ?? [])
        {
            if (item.AsText("an entry of 'by'", parts.Report) is { } name && parts.Unit(name.Text, name.Place) is { } unit && !units.Contains(unit)) units.Add(unit);
        }

        return units;
    }
}
