using System.Collections.Immutable;
using EolSequencer.Model.Devices;

namespace EolSequencer.Devices.Adapters;

/// <summary>What a device can do with the settings it is given; what its device kind wants beyond that is refused before it is opened.</summary>
/// <param name="Channels">The channels it can read.</param>
/// <param name="Actions">The names of what it can do.</param>
public sealed record DeviceOffer(ImmutableArray<OfferedChannel> Channels, ImmutableArray<string> Actions)
{
    /// <summary>What the kind wants and this does not offer, or not as often, for people; null when it fits.</summary>
    public string? Misfit(DeviceKind kind)
    {
        foreach (var channel in kind.Channels.Values)
        {
            if (Channels.FirstOrDefault(one => one.Name == channel.Name) is not { } offered) return Lacks(kind, "channel", channel.Name, Channels.Select(one => one.Name));
            if (channel.Every < offered.Fastest)
            {
                return $"'{kind.Id}' polls {channel.Name} every {channel.Every.Value.TotalMilliseconds:0.###} ms, a new value takes {offered.Fastest.Value.TotalMilliseconds:0.###} ms here; write a longer  every";
            }
        }

        return kind.Actions.Keys.FirstOrDefault(action => !Actions.Contains(action)) is { } missing ? Lacks(kind, "action", missing, Actions) : null;
    }

    private static string Lacks(DeviceKind kind, string what, string name, IEnumerable<string> offered)
    {
        var all = string.Join(", ", offered.Order(StringComparer.Ordinal));
        return $"'{kind.Id}' has the {what} '{name}', which is not offered here; offered {(all.Length == 0 ? "is none" : $"are {all}")}";
    }
}

/// <summary>A channel that a device can read.</summary>
/// <param name="Fastest">The shortest time between two new values; null: no limit is known.</param>
public sealed record OfferedChannel(string Name, TimeSpan? Fastest = null);
