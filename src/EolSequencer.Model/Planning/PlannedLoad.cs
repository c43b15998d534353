namespace EolSequencer.Model.Planning;

/// <summary>Planned time of a part of a sequence, in ticks for each vehicle: all of it, and what of it only one at a time can have.</summary>
public sealed class PlannedLoad(int vehicles)
{
    /// <summary>From beginning to end.</summary>
    public long[] Total { get; } = new long[vehicles];

    /// <summary>In front of the person.</summary>
    public long[] Person { get; } = new long[vehicles];

    /// <summary>On each exclusive device, by role.</summary>
    public SortedDictionary<string, long[]> Devices { get; } = new(StringComparer.Ordinal);

    /// <summary>On one exclusive device; entered with nothing when it was not there.</summary>
    public long[] Device(string role)
    {
        if (!Devices.TryGetValue(role, out var ticks)) Devices[role] = ticks = new long[vehicles];
        return ticks;
    }

    /// <summary>What comes one after the other.</summary>
    public void Add(PlannedLoad next)
    {
        AddTo(Total, next.Total);
        AddShared(next);
    }

    /// <summary>
    /// What runs side by side takes as long as its longest lane, but no less than everything that the person, or one
    /// exclusive device, has to do in all of them.
    /// </summary>
    public static PlannedLoad SideBySide(IReadOnlyCollection<PlannedLoad> lanes, int vehicles)
    {
        var all = new PlannedLoad(vehicles);
        foreach (var lane in lanes) all.AddShared(lane);
        for (var vehicle = 0; vehicle < vehicles; vehicle++)
        {
            var longest = all.Person[vehicle];
            foreach (var ticks in all.Devices.Values) longest = Math.Max(longest, ticks[vehicle]);
            foreach (var lane in lanes) longest = Math.Max(longest, lane.Total[vehicle]);
            all.Total[vehicle] = longest;
        }

        return all;
    }

    /// <summary>The most that lanes wait for something they share, over all vehicles: all of it but the largest share.</summary>
    /// <param name="of">The share of a lane; null: it has none.</param>
    public static TimeSpan Waiting(IReadOnlyCollection<PlannedLoad> lanes, Func<PlannedLoad, long[]?> of)
    {
        var shares = lanes.Select(of).OfType<long[]>().ToList();
        if (shares.Count < 2) return TimeSpan.Zero;
        var most = 0L;
        for (var vehicle = 0; vehicle < shares[0].Length; vehicle++)
        {
            most = Math.Max(most, shares.Sum(share => share[vehicle]) - shares.Max(share => share[vehicle]));
        }

        return new TimeSpan(most);
    }

    private void AddShared(PlannedLoad other)
    {
        AddTo(Person, other.Person);
        foreach (var (role, ticks) in other.Devices) AddTo(Device(role), ticks);
    }

    private static void AddTo(long[] sum, long[] more)
    {
        for (var at = 0; at < sum.Length; at++) sum[at] += more[at];
    }
}
