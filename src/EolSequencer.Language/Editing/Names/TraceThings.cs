using EolSequencer.Language.Editing.Outline;

namespace EolSequencer.Language.Editing.Names;

/// <summary>The traces that can be named at a place: groups that capture, the channels that they keep, and their features.</summary>
internal static class TraceThings
{
    public static IEnumerable<Thing> Of(Spot spot) => ResultThings.ListsAround(spot).SelectMany(list => Groups(list, spot)).DistinctBy(thing => thing.Name);

    private static IEnumerable<Thing> Groups(OutlineList list, Spot spot) => list.Items.OfType<OutlineMap>().SelectMany(map => Groups(map, spot));

    private static IEnumerable<Thing> Groups(OutlineMap map, Spot spot)
    {
        if (map.Find("together") is OutlineMap branches) return branches.Entries.Select(entry => entry.Value).OfType<OutlineList>().SelectMany(list => Groups(list, spot));
        if (map.Find("group") is not OutlineText id) return [];
        var captured = Captured(map).ToList();
        var inner = map.Find("steps") is OutlineList steps ? Groups(steps, spot).ToList() : [];
        if (captured.Count + inner.Count == 0) return [];
        return
        [
            new Thing(id.Text, ProposalKind.Name, captured.Count > 0 ? $"captures {string.Join(", ", captured)}" : "holds groups that capture")
            {
                Place = spot.PlaceOf(id),
                Parts = () => [.. Devices(captured, spot), .. inner],
            },
        ];
    }

    /// <summary>The channels that a group keeps, without their indexes.</summary>
    private static IEnumerable<string> Captured(OutlineMap group)
    {
        var channels = group.Find("capture") is OutlineMap map ? map.Find("channels") : group.Find("capture");
        return ((channels as OutlineList)?.Items ?? [])
            .Select(item => item is OutlineMap one ? one.TextOf("channel") : (item as OutlineText)?.Text)
            .OfType<string>().Select(channel => channel.Split('[')[0]).Distinct();
    }

    private static IEnumerable<Thing> Devices(List<string> captured, Spot spot) => captured.GroupBy(channel => channel.Split('.')[0]).Select(device => new Thing(device.Key, ProposalKind.Name, "what it captures of this device")
    {
        Parts = () => device.Select(channel => Channel(device.Key, channel, spot)).OfType<Thing>(),
    });

    private static Thing? Channel(string role, string channel, Spot spot)
    {
        var name = channel[(channel.IndexOf('.') + 1)..];
        var (_, kind, file) = spot.Roles().FirstOrDefault(one => one.Role == role);
        return kind?.Channels.GetValueOrDefault(name) is { } found
            ? DeviceThings.Channel(found, file) with { Parts = () => FeatureThings.Of(found.Shape), Values = [] }
            : null;
    }
}
