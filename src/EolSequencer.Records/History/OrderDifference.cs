using System.Collections.Immutable;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.History;

/// <summary>What two orders of one vehicle say otherwise.</summary>
internal static class OrderDifference
{
    private const int MostNamed = 20;

    /// <summary>What differs in what the vehicle is: its type and its options. What was judged before was judged on another vehicle.</summary>
    public static IEnumerable<string> OfVehicle(Order before, Order now) =>
        Text("vehicle type", before.VehicleType, now.VehicleType).Concat(Values(before.Options, now.Options));

    /// <summary>Everything that differs, options first, cut off where it is much; empty: nothing.</summary>
    public static ImmutableArray<string> Of(Order before, Order now)
    {
        var all = OfVehicle(before, now).Concat(Values(before.Facts, now.Facts)).Concat(Text("order", before.Id, now.Id)).ToList();
        return all.Count <= MostNamed ? [.. all] : [.. all.Take(MostNamed), $"and {all.Count - MostNamed} more"];
    }

    private static IEnumerable<string> Values(ImmutableSortedDictionary<string, Value> before, ImmutableSortedDictionary<string, Value> now) =>
        before.Keys.Union(now.Keys).Order(StringComparer.Ordinal).SelectMany(name => Text(name, before.GetValueOrDefault(name)?.ToString(), now.GetValueOrDefault(name)?.ToString()));

    private static IEnumerable<string> Text(string name, string? before, string? now) =>
        before == now ? [] : [$"{name}: {Shown(before)} → {Shown(now)}"];

    private static string Shown(string? text) => text is null ? "nothing" : TextRules.Quote(text);
}
