using EolSequencer.Language.Editing.Outline;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Editing.Names;

/// <summary>The results that can be named at a place: of steps around it and of those at the top.</summary>
internal static class ResultThings
{
    private static readonly string[] Lists = ["steps", "prepare", "always", "after-verdict"];

    public static IEnumerable<Thing> Of(Spot spot) => ListsAround(spot).SelectMany(list => Children(list, spot)).DistinctBy(thing => thing.Name);

    /// <summary>The lists of steps around a place, innermost first, and those at the top.</summary>
    public static IEnumerable<OutlineList> ListsAround(Spot spot) => spot.Caret.Around
        .Where(one => one.Entry is { } entry && Lists.Contains(entry.Key.Text)).Select(one => one.Entry!.Value)
        .Reverse()
        .Concat(Lists.Select(spot.Caret.Root.Find))
        .OfType<OutlineList>();

    private static IEnumerable<Thing> Children(OutlineList list, Spot spot) => list.Items.OfType<OutlineMap>().SelectMany(map => Child(map, spot));

    private static IEnumerable<Thing> Child(OutlineMap map, Spot spot)
    {
        if (map.Find("together") is OutlineMap branches) return branches.Entries.Select(entry => entry.Value).OfType<OutlineList>().SelectMany(list => Children(list, spot));
        if (map.Find("step") is OutlineText step) return [Step(map, step, spot)];
        return map.Find("group") is OutlineText group ? [Group(map, group, spot)] : [];
    }

    private static Thing Step(OutlineMap map, OutlineText id, Spot spot)
    {
        var channel = map.TextOf("read") ?? map.TextOf("sample");
        var shape = channel is null ? null : ShapeOf(channel, spot);
        return new Thing(id.Text, ProposalKind.Name, channel is null ? "result of a step" : $"result of {channel}")
        {
            Place = spot.PlaceOf(id),
            Parts = () =>
            [
                new Thing("verdict", ProposalKind.Name, "none, pass, inconclusive, fail or error") { Values = ["none", "pass", "inconclusive", "fail", "error"] },
                new Thing("took", ProposalKind.Name, "the time it took") { Parts = () => DeviceThings.UnitsOf(ValueShape.Time) },
                new Thing("or", ProposalKind.Function, "or(x): what holds when there is no result"),
                .. shape is null ? [] : DeviceThings.UnitsOf(shape),
            ],
        };
    }

    private static Thing Group(OutlineMap map, OutlineText id, Spot spot) => new(id.Text, ProposalKind.Name, "results of a group")
    {
        Place = spot.PlaceOf(id),
        Parts = () => map.Find("steps") is OutlineList steps ? Children(steps, spot) : [],
    };

    private static ValueShape? ShapeOf(string channel, Spot spot)
    {
        var point = channel.IndexOf('.');
        if (point < 0) return null;
        var name = channel[(point + 1)..].Split('[')[0];
        return spot.Roles().FirstOrDefault(role => role.Role == channel[..point]).Kind?.Channels.GetValueOrDefault(name)?.Shape;
    }
}
