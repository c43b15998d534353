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
    private static readonly Words<bool> IfMissing = new(("error", false), ("fail", true));

    /// <summary>Times between two readings that a file may ask for.</summary>
    private static readonly ValueForm Pace = Forms.Duration(TimeSpan.FromMilliseconds(1), TimeSpan.FromHours(1));

    private static readonly MapKey[] Common =
    [
        new("when", Forms.Expression, "vehicles that have it, by their options; where 'from' exists if nothing is said"),
        new("if-missing", Forms.Word(IfMissing), "fail: a missing reading speaks of the vehicle"),
    ];

    private static readonly MapKey[] Polled = [.. Common, new("every", Pace, "how often a condition asks; 100 ms if nothing is said")];
    private static readonly MapKey[] Placed = [new("as", RawTypes.Form, "raw type: uint16, int8, float32, yes-no, text(n), bytes(n)"), .. BitLayouts.Keys, .. RawForms.Keys];

    private static readonly ValueForm.Cases BySource = new("a channel",
    [
        ("data", Source("data", [UnitChoice.From, new("data", Forms.Whole(0, 0xFFFF), "data identifier (ISO 14229-1, service 22)")], [UnitChoice.By, .. Placed, .. Polled])),
        ("routine", Source("routine", [UnitChoice.From, new("routine", Forms.Whole(0, 0xFFFF), "routine whose results are asked for (service 31 03)")], [UnitChoice.By, .. Placed, .. Polled])),
        ("service", Source("service", [UnitChoice.From, ServiceWords.Service], [UnitChoice.By, .. ServiceWords.Keys, .. Polled])),
        ("obd", Source("obd", [new("obd", Forms.Whole(0, 0xFF), "parameter of service 01; formula and unit are those of SAE J1979")], Polled)),
        ("frame", Source("frame",
            [
                new("frame", Forms.Whole(0, 0x1FFFFFFF), "identifier of a cyclic frame; nothing is asked"),
                new("cycle", Pace, "cycle time; three of it without a frame make the value stale"),
            ],
            [.. Placed, .. Common], "bit", "bits")),
    ]);

    /// <summary>What a channel looks like, by the key that says how it is obtained.</summary>
    public static ValueForm Form => BySource;

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
        if (BySource.Of(map) is not { } source)
        {
            parts.Report.Add(VehicleCodes.SourceWanted, key.Place, $"'{key.Text}' does not say how it is obtained");
            return null;
        }

        if (MapReader.Open(map, BySource.ShapeOf(source), parts.Report) is not { } keys) return null;
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
            Every = source == "frame" ? null : keys.Duration("every"),
        };
    }

    private ChannelDescription? Record(MapReader keys, string source)
    {
        var unit = UnitChoice.Read(keys, parts);
        var identifier = keys.Whole(source);
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
        if (keys.Whole("obd") is not { } parameter) return null;
        if (ObdParameters.ShapeOf((int)parameter) is { } shape)
        {
            return new ChannelDescription { Name = "", Shape = shape, Source = new ChannelSource.Obd((int)parameter) };
        }

        parts.Report.Add(VehicleCodes.UnknownObd, keys.PlaceOf("obd"), $"parameter 0x{parameter:X2} of service 01 is not decoded here");
        return null;
    }

    private ChannelDescription? Broadcast(MapReader keys)
    {
        var frame = keys.Whole("frame");
        var cycle = keys.Duration("cycle");
        if (BitLayouts.Read(keys, mostBit: 511) is not { } layout) return null;
        if (layout.Count is null)
        {
            parts.Report.Add(SyntaxCodes.MissingKey, keys.Place, "a channel with 'frame' has neither 'bit' nor 'bits'", "add  bits: FIRST+COUNT");
            return null;
        }

        if (RawForms.Read(keys, "as", layout.Count) is not { } raw || frame is not { } id || cycle is not { } time) return null;
        return Described(raw, IndexOver(layout), null, new ChannelSource.Broadcast((uint)id, layout.Bits, raw.Form, time));
    }

    private static ValueForm Source(string source, MapKey[] required, MapKey[] optional, params string[] exactlyOne) => Forms.Map(new MapShape($"a channel with '{source}'", required, optional, exactlyOne));

    private static ImmutableArray<IndexValue> IndexOver(BitLayout layout) => [.. layout.Names.Select(name => new IndexValue(name, null))];

    private static ChannelDescription Described(RawValue raw, ImmutableArray<IndexValue> indexes, Expression? when, ChannelSource source) =>
        new() { Name = "", Shape = raw.Shape, Indexes = indexes, When = when, Source = source };
}
