using System.Globalization;
using EolSequencer.Language.Plants;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Editing.Names;

/// <summary>What devices offer: channels with their source and unit, and actions.</summary>
internal static class DeviceThings
{
    /// <summary>The devices of a file, each with its channels.</summary>
    public static IEnumerable<Thing> Channels(Spot spot) => spot.Roles().Select(role =>
        Role(spot, role.Role, role.Kind) with { Parts = () => role.Kind.Channels.Values.Select(channel => Channel(channel, role.File)) });

    /// <summary>The devices of a file, each with its actions.</summary>
    public static IEnumerable<Thing> Actions(Spot spot) => spot.Roles().Select(role =>
        Role(spot, role.Role, role.Kind) with { Parts = () => role.Kind.Actions.Values.Select(action => Action(action, role.File)) });

    /// <summary>The units in which the number of a value can be taken by name.</summary>
    public static IEnumerable<Thing> UnitsOf(ValueShape shape) => shape is { Kind: ValueKind.Number or ValueKind.Time, Unit: { } unit }
        ? UnitTable.Of(unit.Dimension).Select(one => new Thing(one.ExpressionName, ProposalKind.Unit, $"number in {one.Symbol}"))
        : [];

    private static Thing Role(Spot spot, string role, DeviceKind kind) => new(role, ProposalKind.Name, $"device of kind {kind.Id}")
    {
        Place = (kind.Id == DeviceKind.VehicleBus ? spot.TypeFile : spot.Folder.Find(FileKind.DeviceKind, kind.Id))?.IdPlace,
    };

    public static Thing Channel(ChannelDescription channel, PlantFile? file) => new(channel.Name, ProposalKind.Channel, channel.Shape.ToString())
    {
        Text = string.Join('\n', LinesOf(channel)),
        Place = Spot.PlaceIn(file, "channels", channel.Name),
        Parts = () => UnitsOf(channel.Shape),
        Indexes = [.. channel.Indexes.Select(index => index.Value)],
        Values = ValuesOf(channel.Shape),
    };

    private static IEnumerable<string> LinesOf(ChannelDescription channel)
    {
        if (SourceWords.Of(channel) is { } source) yield return source;
        if (RangeOf(channel) is { } range) yield return range;
        if (!channel.Indexes.IsEmpty) yield return $"index: {string.Join(", ", channel.Indexes.Select(index => index.Value))}";
        if (channel.IsEvent) yield return "results come once; a read waits for the next one";
        if (channel.Every is { } every) yield return $"polled every {Milliseconds(every)}";
        if (channel.When is { } when) yield return $"only when {when.Text}";
        if (channel.MissingFails) yield return "a missing reading speaks of the vehicle";
    }

    /// <summary>What the raw bits can say, in the channel's unit.</summary>
    private static string? RangeOf(ChannelDescription channel)
    {
        var form = channel.Source switch
        {
            ChannelSource.Data data => data.Form,
            ChannelSource.RoutineResult routine => routine.Form,
            ChannelSource.Broadcast frame => frame.Form,
            _ => null,
        };
        if (form is not { Type: RawType.Unsigned or RawType.Signed, Length: > 0 and <= 32 }) return null;
        var (least, most) = form.Type == RawType.Signed ? (-(1L << (form.Length - 1)), (1L << (form.Length - 1)) - 1) : (0L, (1L << form.Length) - 1);
        var (low, high) = (least * form.Scale + form.Offset, most * form.Scale + form.Offset);
        var unit = form.Unit is { } known ? $" {known.Symbol}" : "";
        return $"range: {Number(Math.Min(low, high))} .. {Number(Math.Max(low, high))}{unit}, one step {Number(Math.Abs(form.Scale))}{unit}";
    }

    private static Thing Action(ActionDescription action, PlantFile? file) => new(action.Name, ProposalKind.Action, action.To is { } to ? $"is set to {to}" : "is done")
    {
        Text = string.Join('\n', LinesOf(action)),
        Place = Spot.PlaceIn(file, "actions", action.Name),
        Indexes = [.. action.Indexes.Select(index => index.Value)],
        Values = action.To is { } shape ? ValuesOf(shape) : [],
        Parts = () => action.Parameters.Select(parameter => new Thing(parameter.Name, ProposalKind.Name, parameter.Shape.ToString()) { Values = ValuesOf(parameter.Shape) }),
    };

    private static IEnumerable<string> LinesOf(ActionDescription action)
    {
        if (SourceWords.Of(action) is { } source) yield return source;
        foreach (var parameter in action.Parameters) yield return $"with {parameter.Name}: {parameter.Shape}";
        if (action.Returns is { } returns) yield return $"returns {returns}";
        if (!action.Indexes.IsEmpty) yield return $"index: {string.Join(", ", action.Indexes.Select(index => index.Value))}";
        if (action.Moves || action.Energises || action.Heats) yield return "a step that uses it needs a caution";
        if (action.IsRepeatable) yield return "may be done again after a crash";
    }

    /// <summary>The values of a type that are words.</summary>
    public static IReadOnlyList<string> ValuesOf(ValueShape shape) => shape.Kind == ValueKind.Truth ? ["yes", "no"] : [.. shape.Choices];

    private static string Milliseconds(TimeSpan time) => $"{time.TotalMilliseconds.ToString("0.###", CultureInfo.InvariantCulture)} ms";

    private static string Number(decimal number) => number.ToString("0.############################", CultureInfo.InvariantCulture);
}
