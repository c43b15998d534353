using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads the channels of a vehicle type: how each is obtained, its type, and the vehicles that have it.</summary>
internal sealed class ChannelBinder(VehicleParts parts)
{
    private static readonly string[] Sources = ["data", "routine", "service", "obd", "frame"];
    private static readonly string[] Polled = ["when", "every", "if-missing"];
    private static readonly string[] Places = ["as", "bit", "bits", .. RawForms.Keys];

    private static readonly Dictionary<string, MapShape> ShapesBySource = new(StringComparer.Ordinal)
    {
        ["data"] = new MapShape("a channel with 'data'", ["from", "data"], ["by", .. Places, .. Polled]),
        ["routine"] = new MapShape("a channel with 'routine'", ["from", "routine"], ["by", .. Places, .. Polled]),
        ["service"] = new MapShape("a channel with 'service'", ["from", "service"], ["by", "mask", "as", .. Polled]),
        ["obd"] = new MapShape("a channel with 'obd'", ["obd"], Polled),
        ["frame"] = new MapShape("a channel with 'frame'", ["frame", "cycle"], [.. Places, "when", "if-missing"]),
    };

    private static readonly Words<bool> IfMissing = new(("error", false), ("fail", true));

    /// <summary>Longest time between two readings that a file may ask for.</summary>
    private static readonly TimeSpan Slowest = TimeSpan.FromHours(1);

    public ImmutableSortedDictionary<string, ChannelDescription> Bind(YamlMap? map)
    {
        var channels = ImmutableSortedDictionary.CreateBuilder<string, ChannelDescription>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a channel", parts.Report);
            if (Channel(key, value) is { } channel && name is not null) channels[name] = channel with { Name = name };
        }

        return channels.ToImmutable();
    }

    private ChannelDescription? Channel(YamlScalar key, YamlNode value)
    {
        if (value.AsMap("a channel", parts.Report) is not { } map) return null;
        var source = Sources.FirstOrDefault(word => map.Find(word) is not null);
        if (source is null)
        {
            parts.Report.Add(VehicleCodes.SourceWanted, key.Place, $"'{key.Text}' does not say how it is obtained");
            return null;
        }

        if (MapReader.Open(map, ShapesBySource[source], parts.Report) is not { } keys) return null;
        var when = Conditions.Add(keys, "when", parts.Names, parts.Batch);
        var channel = source switch
        {
            "data" or "routine" => Record(keys, source),
            "service" => Service(keys),
            "obd" => Obd(keys),
            _ => Broadcast(keys),
        };
        return channel is null ? null : channel with
        {
            When = when ?? channel.When,
            MissingFails = keys.Word("if-missing", IfMissing) ?? false,
            Every = source == "frame" ? null : keys.Duration("every", TimeSpan.FromMilliseconds(1), Slowest),
        };
    }

    private ChannelDescription? Record(MapReader keys, string source)
    {
        var unit = UnitChoice.Read(keys, parts);
        var identifier = keys.Whole(source, 0, 0xFFFF);
        var layout = BitLayouts.Read(keys, mostBit: 4095 * 8 - 1);
        if (layout is null || RawForms.Read(keys, "as", layout.Count) is not { } raw || unit is null || identifier is not { } id) return null;
        if (unit.IsAll)
        {
            parts.Report.Add(VehicleCodes.WhichUnit, keys.PlaceOf("from"), "all control units are asked, and it is not said which one's answer counts");
            return null;
        }

        if (!unit.Indexes.IsEmpty && !layout.Names.IsEmpty)
        {
            parts.Report.Add(VehicleCodes.IndexTwice, keys.PlaceOf("by"), "both 'by' and the names in 'bits' would be the index");
            return null;
        }

        return Described(raw, unit.Indexes.IsEmpty ? IndexOver(layout) : unit.Indexes, unit.When, source == "data"
            ? new ChannelSource.Data(unit.Unit, (int)id, layout.Bits, raw.Form)
            : new ChannelSource.RoutineResult(unit.Unit, (int)id, layout.Bits, raw.Form));
    }

    private ChannelDescription? Service(MapReader keys)
    {
        var unit = UnitChoice.Read(keys, parts);
        if (ServiceWords.Read(keys) is not { } service || unit is null) return null;
        return new ChannelDescription
        {
            Name = "",
            Shape = service.Shape,
            Indexes = unit.Indexes,
            When = unit.When,
            Source = new ChannelSource.Service(unit.Unit, service.Kind, service.Mask),
        };
    }

    private ChannelDescription? Obd(MapReader keys)
    {
        if (keys.Whole("obd", 0, 0xFF) is not { } parameter) return null;
        if (ObdParameters.ShapeOf((int)parameter) is { } shape)
        {
            return new ChannelDescription { Name = "", Shape = shape, Source = new ChannelSource.Obd((int)parameter) };
        }

        parts.Report.Add(VehicleCodes.UnknownObd, keys.PlaceOf("obd"), $"parameter 0x{parameter:X2} of service 01 is not decoded here");
        return null;
    }

    private ChannelDescription? Broadcast(MapReader keys)
    {
        var frame = keys.Whole("frame", 0, 0x1FFFFFFF);
        var cycle = keys.Duration("cycle", TimeSpan.FromMilliseconds(1), Slowest);
        if (BitLayouts.Read(keys, mostBit: 511) is not { } layout) return null;
        if (layout.Count is null)
        {
            parts.Report.Add(SyntaxCodes.MissingKey, keys.Place, "a channel with 'frame' has neither 'bit' nor 'bits'", "add  bits: FIRST+COUNT");
            return null;
        }

        if (RawForms.Read(keys, "as", layout.Count) is not { } raw || frame is not { } id || cycle is not { } time) return null;
        return Described(raw, IndexOver(layout), null, new ChannelSource.Broadcast((uint)id, layout.Bits, raw.Form, time));
    }

    private static ImmutableArray<IndexValue> IndexOver(BitLayout layout) => [.. layout.Names.Select(name => new IndexValue(name, null))];

    private static ChannelDescription Described(RawValue raw, ImmutableArray<IndexValue> indexes, Expression? when, ChannelSource source) =>
        new() { Name = "", Shape = raw.Shape, Indexes = indexes, When = when, Source = source };
}
