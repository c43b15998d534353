using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>What seeds have found, each as the shortest story that shows it.</summary>
public sealed class FoundStoryTests
{
    private static readonly VehicleStory Quiet = new(0, 1, [], null, [], null, false);

    /// <summary>Found as seed 9: the question after a step waits for a person, however long it takes.</summary>
    [Fact]
    public void A_question_that_nobody_answers_stands_until_somebody_stops_the_run()
    {
        var vehicle = Play(Quiet with { Faults = ["ignores=body.hood"] })[0];

        Assert.True(vehicle.Result.Interrupted);
        Assert.Equal("body.hood", vehicle.Told.Select(one => one.Event).OfType<Asked>().Last().Step);
        Assert.Equal("stopped at the station", vehicle.Told.Select(one => one.Event).OfType<Stopped>().Single().Reason);
    }

    /// <summary>Found as seed 54: the log has the event when the sync behind it fails, and nothing overwrites it before the next start.</summary>
    [Fact]
    public void An_event_whose_sync_failed_may_be_found_whole_by_the_next_start()
    {
        var kept = Enumerable.Range(1, 60)
            .Select(before => Play(Quiet with { Disk = new DiskTrouble.Failing(before, 4) }, Quiet with { RestartsBefore = true })[0])
            .Select(vehicle => (vehicle.Recorded?.Length ?? 0) - vehicle.Reported)
            .Distinct();

        Assert.Equal([0, 1], kept.Order());
    }

    /// <summary>Found as seed 457: such a run was told to the line as passed and kept as interrupted.</summary>
    [Fact]
    public void A_stop_while_the_vehicle_is_left_safe_changes_nothing()
    {
        var good = Play(Quiet)[0];
        var safe = good.Told.Last(one => one.Event is Begun { Step: "session_end" }).At;

        var stopped = Play(Quiet with { Stop = safe + TimeSpan.FromMilliseconds(1) })[0];

        Assert.False(stopped.Result.Interrupted);
        Assert.Equal(Verdict.Pass, stopped.Result.RollUp.Verdict);
        Assert.Equal(good.Tried, stopped.Tried);
    }

    private static System.Collections.Immutable.ImmutableArray<TestedVehicle> Play(params VehicleStory[] vehicles)
    {
        var played = StoryPlayer.Play(new Story(1, [.. vehicles]));
        Assert.Empty(Invariant.BreachesOf(played));
        return played.Vehicles;
    }
}
