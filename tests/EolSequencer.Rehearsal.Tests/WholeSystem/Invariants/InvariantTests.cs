using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>An invariant that cannot fail would make every seed a success.</summary>
public sealed class InvariantTests
{
    private static readonly VehicleStory Quiet = new(0, 1, [], null, [], null, false);

    private static readonly Lazy<PlayedStory> Good = new(() => StoryPlayer.Play(new Story(1, [Quiet])));

    /// <summary>Two runs that broke off: with seed 7 the first goes on, and another vehicle has come after the second.</summary>
    private static readonly Lazy<PlayedStory> TakenUp = new(() => StoryPlayer.Play(new Story(7, [Quiet with { Disk = new DiskTrouble.Killed(100) }, Quiet with { Disk = new DiskTrouble.Killed(100) }, Quiet])));

    public static TheoryData<int> Ways => [.. Enumerable.Range(0, Broken.Ways.Count)];

    [Fact]
    public void A_good_vehicle_breaks_none() => Assert.Empty(Invariant.BreachesOf(Good.Value));

    [Fact]
    public void A_good_vehicle_whose_run_broke_off_breaks_none()
    {
        Assert.Empty(Invariant.BreachesOf(TakenUp.Value));
        Assert.Equal([ResumedFor.Safety, ResumedFor.Steps, ResumedFor.Safety, ResumedFor.End], TakenUp.Value.Vehicles.SelectMany(vehicle => vehicle.TakenUp).Select(part => part.For));
    }

    [Fact]
    public void Each_can_be_broken() =>
        Assert.Equal(Invariant.All.Select(one => one.Name).Order(StringComparer.Ordinal), Broken.Ways.Select(way => way.Invariant).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Ways))]
    public void What_is_broken_is_seen_by_the_invariant_that_is_there_for_it(int way)
    {
        var (name, @break) = Broken.Ways[way];
        var broken = @break(OfTakeovers.All.Any(one => one.Name == name) ? TakenUp.Value : Good.Value);

        Assert.NotEmpty(Invariant.All.Single(one => one.Name == name).Breaches(broken));
    }
}
