using System.Collections.Immutable;
using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads the actions of a vehicle type: which control unit does what.</summary>
internal sealed class VehicleActionBinder(VehicleParts parts)
{
    private static readonly string[] Sources = ["control", "write", "routine", "service"];
    private static readonly string[] Common = ["by", "when", .. Effects.Keys];

    private static readonly Dictionary<string, MapShape> ShapesBySource = new(StringComparer.Ordinal)
    {
        ["control"] = new MapShape("an action with 'control'", ["from", "control", "to"], [.. RawForms.Keys, .. Common]),
        ["write"] = new MapShape("an action with 'write'", ["from", "write", "to"], ["access", .. RawForms.Keys, .. Common]),
        ["routine"] = new MapShape("an action with 'routine'", ["from", "routine"], ["returns", .. RawForms.Keys, .. Common]),
        ["service"] = new MapShape("an action with 'service'", ["from", "service"], Common),
    };

    private static readonly Words<ServiceAct> Services = new(
        ("clear-trouble-codes", ServiceAct.ClearTroubleCodes),
        ("return-control", ServiceAct.ReturnControl),
        ("extended-session", ServiceAct.ExtendedSession),
        ("default-session", ServiceAct.DefaultSession),
        ("reset", ServiceAct.Reset));

    public ImmutableSortedDictionary<string, ActionDescription> Bind(YamlMap? map)
    {
        var actions = ImmutableSortedDictionary.CreateBuilder<string, ActionDescription>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "an action", parts.Report);
            if (Action(key, value) is { } action && name is not null) actions[name] = action with { Name = name };
        }

        return actions.ToImmutable();
    }

    private ActionDescription? Action(YamlScalar key, YamlNode value)
    {
        if (value.AsMap("an action", parts.Report) is not { } map) return null;
        var source = Sources.FirstOrDefault(word => map.Find(word) is not null);
        if (source is null)
        {
            parts.Report.Add(VehicleCodes.ActWanted, key.Place, $"'{key.Text}' does not say how it is done");
            return null;
        }

        if (MapReader.Open(map, ShapesBySource[source], parts.Report) is not { } keys) return null;
        var when = Conditions.Add(keys, "when", parts.Names, parts.Batch);
        if (UnitChoice.Read(keys, parts) is not { } unit) return null;
        var action = source switch
        {
            "control" => Control(keys, unit),
            "write" => Write(keys, unit),
            "routine" => Routine(keys, unit),
            _ => Service(keys, unit),
        };
        return action is null ? null : Effects.Read(keys, action) with { When = when ?? unit.When };
    }

    private ActionDescription? Control(MapReader keys, UnitChoice unit)
    {
        if (keys.Find("control") is not { } node || RawForms.Read(keys, "to", null) is not { } raw) return null;
        if (node is YamlMap map) return ControlByName(map, raw, unit, keys);
        if (!IsSaid(unit, keys) || node.AsWhole("'control'", 0, 0xFFFF, parts.Report) is not { } id) return null;
        var identifiers = ImmutableDictionary.Create<string, int>(StringComparer.Ordinal).Add("", (int)id);
        return new ActionDescription { Name = "", Indexes = unit.Indexes, To = raw.Shape, Source = new ActionSource.Control(unit.Unit, identifiers, raw.Form) };
    }

    private ActionDescription? ControlByName(YamlMap map, RawValue raw, UnitChoice unit, MapReader keys)
    {
        if (unit.Unit is null)
        {
            parts.Report.Add(VehicleCodes.IndexTwice, keys.PlaceOf("from"), "the names in 'control' are the index, so 'from' names one control unit");
            return null;
        }

        var identifiers = ImmutableDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        var indexes = ImmutableArray.CreateBuilder<IndexValue>(map.Entries.Count);
        foreach (var (key, value) in map.Entries)
        {
            if (Ids.IndexValue(key, "an index", parts.Report) is not { } name || value.AsWhole("'control'", 0, 0xFFFF, parts.Report) is not { } id) continue;
            identifiers[name] = (int)id;
            indexes.Add(new IndexValue(name, null));
        }

        return new ActionDescription { Name = "", Indexes = indexes.ToImmutable(), To = raw.Shape, Source = new ActionSource.Control(unit.Unit, identifiers.ToImmutable(), raw.Form) };
    }

    private ActionDescription? Write(MapReader keys, UnitChoice unit)
    {
        var raw = RawForms.Read(keys, "to", null);
        var level = AccessLevel(keys);
        if (!IsSaid(unit, keys) || keys.Whole("write", 0, 0xFFFF) is not { } id || raw is null || level is null) return null;
        return new ActionDescription { Name = "", Indexes = unit.Indexes, To = raw.Shape, Source = new ActionSource.Write(unit.Unit, (int)id, raw.Form, level.Value) };
    }

    private ActionDescription? Routine(MapReader keys, UnitChoice unit)
    {
        var raw = keys.Has("returns") ? RawForms.Read(keys, "returns", null) : null;
        if (!IsSaid(unit, keys) || keys.Whole("routine", 0, 0xFFFF) is not { } id || (keys.Has("returns") && raw is null)) return null;
        return new ActionDescription { Name = "", Indexes = unit.Indexes, Returns = raw?.Shape, Source = new ActionSource.Routine(unit.Unit, (int)id, raw?.Form) };
    }

    private static ActionDescription? Service(MapReader keys, UnitChoice unit) => keys.Word("service", Services) is { } kind
        ? new ActionDescription { Name = "", Indexes = unit.Indexes, Source = new ActionSource.Service(unit.Unit, kind) }
        : null;

    private bool IsSaid(UnitChoice unit, MapReader keys)
    {
        if (!unit.IsAll) return true;
        parts.Report.Add(VehicleCodes.WhichUnit, keys.PlaceOf("from"), "only services are done by all control units at once");
        return false;
    }

    private int? AccessLevel(MapReader keys)
    {
        if (!keys.Has("access")) return 0;
        if (keys.Text("access") is not { } text) return null;
        const string Prefix = "level-";
        if (text.Text.StartsWith(Prefix, StringComparison.Ordinal) && int.TryParse(text.Text.AsSpan(Prefix.Length), out var level) && level is > 0 and <= 65) return level;
        parts.Report.Add(VehicleCodes.AccessLevel, text.Place, $"{Shown.Quoted(text.Text)} is no access level");
        return null;
    }
}
