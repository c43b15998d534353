using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Source;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>The channels and expressions of the bench, built by hand: the engine knows no files.</summary>
internal static class Channels
{
    private static readonly IndexValue[] Ecus = [new("gateway", null), new("brakes", null)];

    public static readonly DeviceKind BusKind = new(
        DeviceKind.VehicleBus,
        false,
        new[]
        {
            Channel("voltage", ValueShape.Number(UnitTable.Required("V"))),
            Channel("pedal", ValueShape.Truth),
            Channel("key", ValueShape.Truth),
            Channel("gate", ValueShape.Truth),
            Channel("vin", ValueShape.Text()),
            Channel("codes", ValueShape.List),
            Channel("software", ValueShape.Text()) with { Indexes = [.. Ecus] },
        }.ToImmutableSortedDictionary(channel => channel.Name, channel => channel),
        new[] { new ActionDescription { Name = "horn", To = ValueShape.Truth }, new ActionDescription { Name = "clear" } }
            .ToImmutableSortedDictionary(action => action.Name, action => action));

    public static readonly DeviceKind MeterKind = new(
        "dc-meter",
        true,
        new[] { Channel("current", ValueShape.Number(UnitTable.Required("A"))) }.ToImmutableSortedDictionary(channel => channel.Name, channel => channel),
        ImmutableSortedDictionary<string, ActionDescription>.Empty);

    public static readonly ChannelUse Voltage = new("bus", "voltage", null);
    public static readonly ChannelUse Pedal = new("bus", "pedal", null);
    public static readonly ChannelUse Key = new("bus", "key", null);
    public static readonly ChannelUse Gate = new("bus", "gate", null);
    public static readonly ChannelUse Current = new("meter", "current", null);

    public static ChannelDescription Of(ChannelUse use) => (use.Role == "bus" ? BusKind : MeterKind).Channels[use.Channel];

    public static NumberValue Volt(decimal number) => new(number, UnitTable.Required("V"));

    public static NumberValue Ampere(decimal number) => new(number, UnitTable.Required("A"));

    public static NumberValue Seconds(decimal number) => new(number, UnitTable.Second);

    /// <summary>A truth channel as a condition.</summary>
    public static Expression True(ChannelUse use) =>
        Expression(ValueShape.Truth, use.ToString(), [use], [], scope => scope.Channel(0));

    public static Expression Expression(
        ValueShape shape, string text, ImmutableArray<ChannelUse> channels, ImmutableArray<ResultUse> results, Func<ExpressionScope, Value> evaluate)
    {
        var expression = new Expression(text, SourcePlace.None);
        expression.Complete(new Expression.Compiled(shape, channels, results, evaluate));
        return expression;
    }

    private static ChannelDescription Channel(string name, ValueShape shape) => new() { Name = name, Shape = shape, Every = TimeSpan.FromMilliseconds(20) };
}
