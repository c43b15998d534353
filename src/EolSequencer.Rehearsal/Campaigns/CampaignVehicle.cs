using System.Collections.Immutable;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>A combination of options that a campaign rehearses.</summary>
/// <param name="Number">Its place among all combinations, from 0.</param>
/// <param name="Options">The word for every option.</param>
/// <param name="Order">The invented order of the vehicle.</param>
public sealed record CampaignVehicle(int Number, ImmutableSortedDictionary<string, string> Options, Order Order)
{
    /// <summary>In words: <c>drive awd, tow yes</c>.</summary>
    public string Text => string.Join(", ", Options.Select(option => $"{option.Key} {option.Value}"));

    /// <summary>One vehicle for each combination that can be built.</summary>
    public static ImmutableArray<CampaignVehicle> All(VehicleType type, SequencePlan plan)
    {
        return [.. plan.Vehicles.Select((vehicle, number) => Of(type, number, Words(vehicle)))];

        ImmutableSortedDictionary<string, string> Words(PlannedVehicle vehicle) => plan.Options
            .Zip(vehicle.Values).ToImmutableSortedDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
    }

    /// <summary>
    /// Few of them, so that every two option values that occur together in any do so in one of these: again and again the
    /// vehicle that shows the most pairs not seen yet, of equals the first.
    /// </summary>
    public static ImmutableArray<CampaignVehicle> Covering(ImmutableArray<CampaignVehicle> all)
    {
        var open = all.SelectMany(Pairs).ToHashSet();
        var chosen = ImmutableArray.CreateBuilder<CampaignVehicle>();
        if (open.Count == 0) return all.IsEmpty ? all : [all[0]];
        while (open.Count > 0)
        {
            var best = all.MaxBy(vehicle => Pairs(vehicle).Count(open.Contains))!;
            chosen.Add(best);
            open.ExceptWith(Pairs(best));
        }

        return chosen.DrainToImmutable();
    }

    private static CampaignVehicle Of(VehicleType type, int number, ImmutableSortedDictionary<string, string> words) =>
        new(number, words, InventedOrder.Of(type, words, number));

    private static IEnumerable<(string, string, string, string)> Pairs(CampaignVehicle vehicle)
    {
        var words = vehicle.Options.ToArray();
        for (var one = 0; one < words.Length; one++)
        {
            for (var other = one + 1; other < words.Length; other++) yield return (words[one].Key, words[one].Value, words[other].Key, words[other].Value);
        }
    }
}
