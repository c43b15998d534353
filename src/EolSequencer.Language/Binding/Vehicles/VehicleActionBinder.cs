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
    private static readonly Words<ServiceAct> Services = new(
        ("clear-trouble-codes", ServiceAct.ClearTroubleCodes),
        ("return-control", ServiceAct.ReturnControl),
        ("extended-session", ServiceAct.ExtendedSession),
        ("default-session", ServiceAct.DefaultSession),
        ("reset", ServiceAct.Reset));

    private static readonly ValueForm Identifier = Forms.Whole(0, 0xFFFF);
    private static readonly MapKey To = new("to", RawTypes.Form, "raw type of what 'set … to' hands over");

    private static readonly MapKey[] Common =
    [
        UnitChoice.By,
        new("when", Forms.Expression, "vehicles that have it, by their options; where 'from' exists if nothing is said"),
        .. Effects.Keys,
    ];

    private static readonly ValueForm.Cases BySource = new("an action",
    [
        ("control", Source("control",
            [UnitChoice.From, new("control", Forms.Either(Identifier, Forms.Names(Ids.IndexForm, Identifier)), "output that is adjusted (service 2F 03), or one for each name"), To],
            [.. RawForms.Keys, .. Common])),
        ("write", Source("write",
            [UnitChoice.From, new("write", Identifier, "data identifier that is written (service 2E)"), To],
            [new("access", new ValueForm.Text("^level-0*(?:[1-9]|[1-5][0-9]|6[0-5])$", Subject.None), "security access (service 27) wanted first: level-3"), .. RawForms.Keys, .. Common])),
        ("routine", Source("routine",
            [UnitChoice.From, new("routine", Identifier, "routine that is started (service 31 01)")],
            [new("returns", RawTypes.Form, "raw type of its first result, for 'expect'"), .. RawForms.Keys, .. Common])),
        ("service", Source("service", [UnitChoice.From, new("service", Forms.Word(Services), "a whole service of the control unit")], Common)),
    ]);

    /// <summary>What an action looks like, by the key that says how it is done.</summary>
    public static ValueForm Form => BySource;

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
        if (BySource.Of(map) is not { } source)
        {
            parts.Report.Add(VehicleCodes.ActWanted, key.Place, $"'{key.Text}' does not say how it is done");
            return null;
        }

        if (MapReader.Open(map, BySource.ShapeOf(source), parts.Report) is not { } keys) return null;
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
        if (!IsSaid(unit, keys) || keys.Whole("write") is not { } id || raw is null || level is null) return null;
        return new ActionDescription { Name = "", Indexes = unit.Indexes, To = raw.Shape, Source = new ActionSource.Write(unit.Unit, (int)id, raw.Form, level.Value) };
    }

    private ActionDescription? Routine(MapReader keys, UnitChoice unit)
    {
        var raw = keys.Has("returns") ? RawForms.Read(keys, "returns", null) : null;
        if (!IsSaid(unit, keys) || keys.Whole("routine") is not { } id || (keys.Has("returns") && raw is null)) return null;
        return new ActionDescription { Name = "", Indexes = unit.Indexes, Returns = raw?.Shape, Source = new ActionSource.Routine(unit.Unit, (int)id, raw?.Form) };
    }

    private static ActionDescription? Service(MapReader keys, UnitChoice unit) => keys.Word("service", Services) is { } kind
        ? new ActionDescription { Name = "", Indexes = unit.Indexes, Source = new ActionSource.Service(unit.Unit, kind) }
        : null;

    private static ValueForm Source(string source, MapKey[] required, MapKey[] optional) => Forms.Map(new MapShape($"an action with '{source}'", required, optional));

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
