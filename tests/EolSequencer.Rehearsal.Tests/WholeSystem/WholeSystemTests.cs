using System.Diagnostics;
using System.Globalization;
using EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>
/// Engine, record, devices, people and disk from one seed, with everything going wrong at once: single tests would never
/// think of most of these meetings. The usual size runs with the tests; the environment variable <c>EOL_SYSTEM_SEEDS</c>
/// asks for more, <c>EOL_SYSTEM_SEED</c> says which is the first.
/// </summary>
public sealed class WholeSystemTests(ITestOutputHelper output)
{
    private const int UsualSeeds = 1_000;

    [Fact]
    public void Whatever_happens_every_invariant_holds()
    {
        var (first, count) = (Setting("EOL_SYSTEM_SEED", 1), Setting("EOL_SYSTEM_SEEDS", UsualSeeds));
        var clock = Stopwatch.StartNew();
        var counts = new StoryCounts();
        for (var seed = first; seed < first + count; seed++) counts.Add(Check((ulong)seed));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} seeds from {first} in {clock.Elapsed.TotalSeconds:0.0} s: {counts}"));
        if (count >= UsualSeeds) Assert.Empty(StoryCounts.Wanted.Except(counts.Counts.Keys));
    }

    /// <summary>Plays the story of a seed; what does not hold is told with the story and the command that shows it again.</summary>
    internal static PlayedStory Check(ulong seed)
    {
        var story = StoryTeller.Of(seed);
        try
        {
            var played = StoryPlayer.Play(story);
            var breaches = Invariant.BreachesOf(played);
            Assert.True(breaches.Count == 0, string.Join('\n', breaches));
            return played;
        }
        catch (Exception fault)
        {
            throw new InvalidOperationException(
                $"""
                {story}
                EOL_SYSTEM_SEED={seed} EOL_SYSTEM_SEEDS=1 dotnet run --project tests/EolSequencer.Rehearsal.Tests -- --filter-class "*WholeSystemTests"
                {fault.Message}
                """,
                fault);
        }
    }

    private static long Setting(string name, int usual) =>
        long.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out var number) ? number : usual;
}
