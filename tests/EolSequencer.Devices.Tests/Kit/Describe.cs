using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>Channels and actions of a vehicle type, as short as a test can say them.</summary>
internal static class Describe
{
    public static readonly ImmutableDictionary<string, BitRange> Whole = ImmutableDictionary<string, BitRange>.Empty;

    public static readonly RawForm YesNo = new() { Type = RawType.YesNo, Length = 8 };

    public static RawForm Number(int bits, decimal scale = 1, string? unit = null) =>
        new() { Type = RawType.Unsigned, Length = bits, Scale = scale, Unit = unit is null ? null : UnitTable.Required(unit) };

    public static RawForm Text(int length, byte? padding = null) => new() { Type = RawType.Text, Length = length, Padding = padding };

    public static ImmutableDictionary<string, BitRange> Bits(params (string Index, int First, int Count)[] bits) =>
        bits.ToImmutableDictionary(bit => bit.Index, bit => new BitRange(bit.First, bit.Count));

    public static ChannelDescription Channel(ChannelSource source) => new() { Name = "channel", Shape = ValueShape.Count, Source = source };

    public static ChannelDescription Data(string? unit, int identifier, RawForm form, ImmutableDictionary<string, BitRange>? bits = null) =>
        Channel(new ChannelSource.Data(unit, identifier, bits ?? Whole, form));

    public static ChannelDescription Signal(uint frame, int first, int count, double cycleMs, RawForm? form = null) =>
        Channel(new ChannelSource.Broadcast(frame, Bits(("", first, count)), form ?? (count == 1 ? YesNo : Number(count)), TimeSpan.FromMilliseconds(cycleMs)));

    public static ActionDescription Action(ActionSource source) => new() { Name = "action", Source = source };

    public static ActionDescription Control(string? unit, RawForm form, params (string Index, int Identifier)[] identifiers) =>
        Action(new ActionSource.Control(unit, identifiers.ToImmutableDictionary(each => each.Index, each => each.Identifier), form));

    public static ActionDescription Act(string? unit, ServiceAct kind) => Action(new ActionSource.Service(unit, kind));
}
