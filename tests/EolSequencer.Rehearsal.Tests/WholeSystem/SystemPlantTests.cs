using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>Without trouble every vehicle passes, so what fails in a story fails because of the story.</summary>
public sealed class SystemPlantTests
{
    [Fact]
    public void Good_vehicles_pass_and_hold_every_invariant()
    {
        var vehicles = Enumerable.Range(0, 3 * DemoPlant.Orders.Count).Select(number => new VehicleStory(number % DemoPlant.Orders.Count, (ulong)number, [], null, [], null, number % 5 == 4));

        var played = StoryPlayer.Play(new Story(1, [.. vehicles]));

        Assert.Empty(Invariant.BreachesOf(played));
        var bad = played.Vehicles.SelectMany(vehicle => vehicle.Told).Select(told => told.Event).OfType<Judged>().Where(judged => judged.Counted > Verdict.Pass);
        Assert.Empty(bad.Select(judged => $"{judged.Step} {judged.Counted} {judged.Detail} {string.Join(' ', judged.Criteria)}"));
        Assert.All(played.Vehicles, vehicle => Assert.Equal(Verdict.Pass, vehicle.Result.RollUp.Verdict));
    }
}
