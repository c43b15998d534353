using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>Something that holds whatever happens.</summary>
/// <param name="Name">What holds, in a few words.</param>
/// <param name="Breaches">Says for each place where it does not hold what was found.</param>
internal sealed record Invariant(string Name, Func<PlayedStory, IEnumerable<string>> Breaches)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Invariant> All { get; } = [.. OfRecords.All, .. OfVerdicts.All, .. OfRuns.All, .. OfTakeovers.All];

    /// <summary>One that looks at each vehicle by itself.</summary>
    public static Invariant OfEach(string name, Func<TestedVehicle, IEnumerable<string>> breaches) =>
        new(name, story => story.Vehicles.SelectMany((vehicle, number) => breaches(vehicle).Select(breach => $"vehicle {number + 1} ({vehicle.Run}): {breach}")));

    /// <summary>Every breach of every invariant, each with the name of what does not hold.</summary>
    public static IReadOnlyList<string> BreachesOf(PlayedStory story) => [.. All.SelectMany(one => one.Breaches(story).Select(breach => $"{one.Name}: {breach}"))];
}
