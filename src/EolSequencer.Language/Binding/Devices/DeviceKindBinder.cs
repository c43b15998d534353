using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Devices;

/// <summary>Reads a file that describes a class of equipment.</summary>
internal static class DeviceKindBinder
{
    private static readonly Words<bool> Sharing = new(("exclusive", true), ("shared", false));
    private static readonly Words<bool> IfMissing = new(("error", false), ("fail", true));

    private static readonly MapShape Channel = new(
        "a channel",
        [],
        [
            .. Shapes.Keys,
            new("by", Ids.IndexList, "index values: the channel has one value for each"),
            new("every", Forms.Duration(TimeSpan.FromMilliseconds(1), TimeSpan.FromHours(1)), "how often a condition polls it; 100 ms if nothing is said"),
            new("event", Forms.YesNo, "results come once; a read waits for the next one after the step began"),
            new("if-missing", Forms.Word(IfMissing), "fail: a missing reading speaks of the vehicle"),
        ],
        Shapes.EitherOf);

    private static readonly MapShape Parameter = new("a value of an action", [], Shapes.Keys, Shapes.EitherOf);

    private static readonly MapShape Act = new(
        "an action",
        [],
        [
            new("to", Shapes.Form, "type of the value of 'set … to'"),
            new("with", Forms.Names(Ids.NameForm, Forms.Map(Parameter)), "the values of 'do … with'; not together with 'to'"),
            new("returns", Shapes.Form, "type of what comes back, for 'expect'"),
            new("by", Ids.IndexList, "one output for each of these values"),
            .. Effects.Keys,
        ]);

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a device kind",
        [new("device-kind", Ids.FileForm, "id of the device kind; vehicle-bus is taken")],
        [
            new("title", Forms.Texts, "what people call it"),
            new("sharing", Forms.Word(Sharing), "exclusive: one exchange at a time, others wait their turn"),
            new("channels", Forms.Names(Ids.NameForm, Forms.Map(Channel)), "what can be read"),
            new("actions", Forms.Names(Ids.NameForm, Forms.Map(Act)), "what can be done"),
        ]);

    /// <summary>The device kind; null: already reported.</summary>
    public static DeviceKind? Bind(YamlNode root, Report report)
    {
        if (MapReader.Open(root, File, report) is not { } keys || keys.Find("device-kind") is not { } idNode) return null;
        if (Ids.OfFile(idNode, "a device kind", report) is not { } id) return null;
        if (id == DeviceKind.VehicleBus)
        {
            report.Add(DeviceCodes.ReservedKind, idNode.Place, $"'{id}' is described by each vehicle type");
            return null;
        }

        keys.Texts("title");
        return new DeviceKind(id, keys.Word("sharing", Sharing) ?? false, Channels(keys.FreeMap("channels"), report), Actions(keys.FreeMap("actions"), report));
    }

    private static ImmutableSortedDictionary<string, ChannelDescription> Channels(YamlMap? map, Report report)
    {
        var channels = ImmutableSortedDictionary.CreateBuilder<string, ChannelDescription>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a channel", report);
            if (MapReader.Open(value, Channel, report) is not { } keys || Shapes.Read(keys) is not { } shape || name is null) continue;
            var isEvent = keys.YesNo("event") ?? false;
            if (isEvent && keys.Has("every")) report.Add(DeviceCodes.PolledEvent, keys.PlaceOf("every"), $"'{name}' is an event and is polled");
            channels[name] = new ChannelDescription
            {
                Name = name,
                Shape = shape,
                Indexes = Indexes(keys),
                Every = keys.Duration("every"),
                IsEvent = isEvent,
                MissingFails = keys.Word("if-missing", IfMissing) ?? false,
            };
        }

        return channels.ToImmutable();
    }

    private static ImmutableSortedDictionary<string, ActionDescription> Actions(YamlMap? map, Report report)
    {
        var actions = ImmutableSortedDictionary.CreateBuilder<string, ActionDescription>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "an action", report);
            if (MapReader.Open(value, Act, report) is not { } keys || name is null) continue;
            if (keys.Has("to") && keys.Has("with")) report.Add(DeviceCodes.ToAndWith, keys.PlaceOf("with"), $"'{name}' has both 'to' and 'with'");
            actions[name] = Effects.Read(keys, new ActionDescription
            {
                Name = name,
                Indexes = Indexes(keys),
                To = keys.Find("to") is { } to ? Shapes.Read(to, "'to'", report) : null,
                Returns = keys.Find("returns") is { } returns ? Shapes.Read(returns, "'returns'", report) : null,
                Parameters = Parameters(keys.FreeMap("with"), report),
            });
        }

        return actions.ToImmutable();
    }

    private static ImmutableArray<ActionParameter> Parameters(YamlMap? map, Report report)
    {
        var parameters = ImmutableArray.CreateBuilder<ActionParameter>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a value of an action", report);
            if (MapReader.Open(value, Parameter, report) is { } keys && Shapes.Read(keys) is { } shape && name is not null) parameters.Add(new ActionParameter(name, shape));
        }

        return parameters.ToImmutable();
    }

    private static ImmutableArray<IndexValue> Indexes(MapReader keys) => keys.Find("by") is { } by
        ? [.. (Ids.IndexValues(by, "'by'", keys.Report) ?? []).Select(value => new IndexValue(value, null))]
        : [];
}
