using System.Collections.Immutable;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Tests.Expressions.Kit;

/// <summary>What the expressions of these tests may name.</summary>
internal static class SmallPlant
{
    private static readonly string[] Doors = ["front_left", "front_right", "rear"];
    private static readonly string[] Ecus = ["gateway", "brakes"];

    public static DeviceKind Bus { get; } = Kind(
        DeviceKind.VehicleBus,
        Channel("brake_switch", ValueShape.Truth),
        Channel("door_ajar", ValueShape.Truth, Doors),
        Channel("engine_speed", Number("rpm")),
        Channel("vehicle_speed", Number("km/h")),
        Channel("coolant", Number("°C")),
        Channel("oil", Number("°C")),
        Channel("pack_voltage", Number("V")),
        Channel("pressure", Number("bar")),
        Channel("gear", ValueShape.Count),
        Channel("count", ValueShape.Count),
        Channel("software", ValueShape.Text(12), Ecus),
        Channel("stored_codes", ValueShape.List));

    public static DeviceKind Rollers { get; } = Kind(
        "roller-bench",
        Channel("speed", Number("km/h")),
        Channel("brake_force", Number("N"), "fl", "fr", "rl", "rr"));

    public static VehicleType Orrin { get; } = new()
    {
        Id = "orrin",
        Title = LocalText.Plain("Light delivery van"),
        CheckDigit = CheckDigitRule.Require,
        Options =
        [
            new OptionDescription("drive", ValueShape.OneOf("fwd", "awd")),
            new OptionDescription("powertrain", ValueShape.OneOf("petrol", "electric")),
            new OptionDescription("tow", ValueShape.Truth),
        ],
        OrderFacts =
        [
            new OrderFact("software", ValueShape.Text(12), [.. Ecus.Select(ecu => new IndexValue(ecu, null))]),
            new OrderFact("paint", ValueShape.Text(), []),
        ],
        ControlUnits = [],
        Bus = Bus,
    };

    /// <summary>Loop names and parameters: a door, a side, a control unit, a wheel, a travel time, a free text and a count.</summary>
    public static ImmutableSortedDictionary<string, ValueShape> Arguments { get; } = new Dictionary<string, ValueShape>
    {
        ["door"] = ValueShape.OneOf(Doors),
        ["side"] = ValueShape.OneOf("left", "right"),
        ["ecu"] = ValueShape.OneOf(Ecus),
        ["wheel"] = ValueShape.OneOf("fl", "fr", "rl", "rr"),
        ["travel"] = ValueShape.Time,
        ["note"] = ValueShape.Text(),
        ["turns"] = ValueShape.Count,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>Everything but results.</summary>
    public static ExpressionNames Names { get; } = new()
    {
        Vehicle = Orrin,
        Roles = new Dictionary<string, DeviceKind> { ["bus"] = Bus, ["rollers"] = Rollers }.ToImmutableSortedDictionary(StringComparer.Ordinal),
        Arguments = Arguments,
    };

    /// <summary>What a <c>when</c> may name.</summary>
    public static ExpressionNames BeforeRun { get; } = new() { Vehicle = Orrin, Arguments = Arguments };

    public static ValueShape Number(string unit) => ValueShape.Number(UnitTable.Required(unit));

    public static ImmutableArray<LoopName> Each(string name, params IEnumerable<string> values) =>
        [new LoopName(name, [.. values.Select(value => new LoopValue(value, null))])];

    public static ExpressionNames With(ResultScope results) => Names with { Results = results };

    private static DeviceKind Kind(string id, params IEnumerable<ChannelDescription> channels) => new(
        id, false,
        channels.ToImmutableSortedDictionary(channel => channel.Name, channel => channel, StringComparer.Ordinal),
        ImmutableSortedDictionary<string, ActionDescription>.Empty);

    private static ChannelDescription Channel(string name, ValueShape shape, params IEnumerable<string> indexes) =>
        new() { Name = name, Shape = shape, Indexes = [.. indexes.Select(index => new IndexValue(index, null))] };
}
