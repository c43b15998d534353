using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.History;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.History;

/// <summary>Whether a vehicle is in order is what its steps say last, never what one lucky run says.</summary>
public sealed class VehicleHistoryTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly StationHold _station;

    public VehicleHistoryTests() => _station = _folder.Take();

    private StationKindState Startup => Vehicle.At("startup")!;

    private VehicleState Vehicle => _folder.OpenToRead().Vehicles.Of(SampleRun.Vin);

    [Fact]
    public void A_retest_that_names_the_run_makes_good_what_failed()
    {
        var whole = Story.Run(_station, [("horn", Pass), ("lamp", Fail)]);
        Assert.False(Startup.HasPassed);

        var retest = Story.Run(_station, [("lamp", Pass)], of: whole);

        Assert.True(Startup.HasPassed);
        Assert.Equal((whole, retest), (Startup.Run.Run, Startup.Retests.Single().Run));
        Assert.Equal([("horn", whole), ("lamp", retest)], Startup.Steps.Select(step => (step.Step, step.Run)));
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void A_retest_can_make_it_worse_and_the_last_one_counts()
    {
        var whole = Story.Run(_station, [("horn", Pass), ("lamp", Fail)]);
        Story.Run(_station, [("horn", Fail), ("lamp", Pass)], of: whole);
        Assert.Equal(["horn"], Startup.Open.Select(step => step.Step));

        Story.Run(_station, [("horn", Pass)], of: whole);
        Assert.True(Startup.HasPassed);
    }

    [Fact]
    public void Some_steps_alone_and_a_retest_of_another_run_change_nothing()
    {
        var first = Story.Run(_station, [("lamp", Fail)]);
        var whole = Story.Run(_station, [("lamp", Fail)]);
        Story.Run(_station, [("lamp", Pass)], only: ["lamp"]);
        Story.Run(_station, [("lamp", Pass)], of: first);

        Assert.Equal(whole, Startup.Run.Run);
        Assert.Empty(Startup.Retests);
        Assert.False(Startup.HasPassed);
    }

    [Fact]
    public void A_newer_whole_run_counts_for_itself()
    {
        var first = Story.Run(_station, [("lamp", Fail)]);
        Story.Run(_station, [("lamp", Pass)], of: first);
        Story.Run(_station, [("lamp", Inconclusive)]);

        Assert.False(Startup.HasPassed);
        Assert.Equal(Inconclusive, Startup.Steps.Single().Counted);
    }

    [Fact]
    public void What_was_not_reached_has_not_passed_until_a_retest_reaches_it()
    {
        var whole = Story.Run(_station, [("horn", Pass)], notReached: ["lamp", "wiper"]);
        Assert.Equal(["lamp", "wiper"], Startup.Open.Select(step => step.Step));
        Assert.All(Startup.Open, step => Assert.Null(step.First));

        Story.Run(_station, [("lamp", Pass), ("wiper", None)], of: whole);
        Assert.True(Startup.HasPassed);
    }

    [Fact]
    public void What_a_retest_was_to_repeat_and_did_not_reach_is_open_again()
    {
        var whole = Story.Run(_station, [("horn", Pass), ("lamp", Fail)]);
        Story.Run(_station, [("lamp", Pass)], of: whole, notReached: ["horn"]);

        Assert.Equal(["horn"], Startup.Open.Select(step => step.Step));
    }

    [Fact]
    public void A_run_that_has_not_ended_has_not_passed()
    {
        var whole = Story.Run(_station, [("lamp", Pass)]);
        Assert.True(Startup.HasPassed);
        var retest = Story.Run(_station, [("lamp", Pass)], of: whole, ends: false);
        Assert.Equal([retest], Startup.Unfinished);
        Assert.False(Startup.HasPassed);

        Story.Run(_station, [("lamp", Pass)], ends: false);
        Assert.False(Startup.HasPassed);
    }

    [Fact]
    public void Of_several_attempts_the_last_counts_and_the_first_is_that_for_first_time_through()
    {
        Story.Run(_station, [("horn", Pass), ("lamp", Fail), ("lamp", Pass)]);

        Assert.True(Startup.HasPassed);
        Assert.False(Startup.IsFirstTimeThrough);
        Assert.Equal((Pass, Fail), (Startup.Steps[1].Counted, Startup.Steps[1].First));
    }

    [Fact]
    public void First_time_through_is_not_changed_by_retests()
    {
        var good = Story.Run(_station, [("lamp", Pass)]);
        Assert.True(Startup.IsFirstTimeThrough);
        Story.Run(_station, [("lamp", Fail)], of: good);
        Assert.True(Startup.IsFirstTimeThrough);

        var bad = Story.Run(_station, [("lamp", Fail)]);
        Story.Run(_station, [("lamp", Pass)], of: bad);
        Assert.False(Startup.IsFirstTimeThrough);
    }

    [Fact]
    public void What_judges_nothing_alone_has_not_passed()
    {
        Story.Run(_station, [("told", None)]);

        Assert.False(Startup.HasPassed);
    }

    [Fact]
    public void Steps_behind_the_verdict_count_for_nothing()
    {
        Story.Run(_station, [("lamp", Pass), ("label", Fail)], notCounted: ["label"]);

        Assert.True(Startup.HasPassed);
        Assert.Equal(["lamp"], Startup.Steps.Select(step => step.Step));
    }

    [Fact]
    public void Rehearsals_and_production_never_mix()
    {
        var whole = Story.Run(_station, [("lamp", Fail)]);
        Story.Run(_station, [("lamp", Pass)], of: whole, mode: RunMode.Rehearsal);
        var rehearsal = Story.Run(_station, [("lamp", Pass)], mode: RunMode.Rehearsal);

        Assert.False(Startup.HasPassed);
        Assert.Equal(rehearsal, _folder.OpenToRead().Vehicles.Of(SampleRun.Vin, RunMode.Rehearsal).At("startup")!.Run.Run);
    }

    [Fact]
    public void Every_station_kind_stands_for_itself()
    {
        using var roller = _folder.Take("roller_1");
        Story.Run(roller, [("brake", Fail)], kind: "roller");
        Story.Run(_station, [("lamp", Pass)]);

        Assert.Equal(["roller", "startup"], Vehicle.Kinds.Select(kind => kind.StationKind));
        Assert.False(Vehicle.HasPassed);
        Assert.True(Startup.HasPassed);
    }

    [Theory]
    [InlineData("9Z9RR1N42TF000018")]
    [InlineData("")]
    [InlineData("' OR 1=1 --")]
    public void A_vehicle_that_was_never_tested_has_not_passed(string vin)
    {
        Story.Run(_station, [("lamp", Pass)]);

        var vehicle = _folder.OpenToRead().Vehicles.Of(vin);
        Assert.Empty(vehicle.Kinds);
        Assert.False(vehicle.HasPassed);
    }

    [Fact]
    public void Whatever_the_story_each_step_stands_as_it_was_found_last() => Gen.Select(
        Gen.Select(Gen.Int[0, 3], Gen.Enum<Verdict>()).Array[0, 6].Array[1, 4], Gen.Bool.Array[4]).Sample(
        (runs, isWhole) =>
        {
            string? whole = null;
            var expected = new Dictionary<string, Verdict>();
            foreach (var (found, k) in runs.Select((found, k) => (found, k)))
            {
                var steps = found.Select(one => ($"step_{one.Item1}", one.Item2)).ToList();
                if (whole is null || isWhole[k]) expected.Clear();
                foreach (var (step, verdict) in steps) expected[step] = verdict;
                var run = Story.Run(_station, steps, of: whole is null || isWhole[k] ? null : whole);
                if (whole is null || isWhole[k]) whole = run;
            }

            Assert.Equal(expected.OrderBy(one => one.Key), Startup.Steps.ToDictionary(step => step.Step, step => step.Counted).OrderBy(one => one.Key));
            Assert.Equal(expected.ContainsValue(Pass) && expected.Values.All(verdict => verdict is Pass or None), Startup.HasPassed);
        },
        iter: 60,
        threads: 1);

    public void Dispose()
    {
        _station.Dispose();
        _folder.Dispose();
    }
}
