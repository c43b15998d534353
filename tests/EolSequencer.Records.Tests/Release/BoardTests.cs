using System.Collections.Immutable;
using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Release;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Release;

/// <summary>Nobody has to look for a vehicle that waits: the board names it, why, and for whom.</summary>
public sealed class BoardTests : IDisposable
{
    private const string Second = "TESTVXN09AA000018";

    private readonly Floor _floor = new();

    [Fact]
    public void Every_vehicle_that_was_run_and_is_not_released_is_there_who_waits_longest_first()
    {
        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal, vin: "TESTVXN02AA000020");
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Second, with: begun => begun with { Wall = At(1) });
        _floor.Run(("lamp", Pass));
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Second, with: begun => begun with { Wall = At(3) });

        Assert.Equal([Second, SampleRun.Vin], Board().Vehicles.Select(one => one.Vin));
        Assert.Equal((At(1), At(3)), (Board().Vehicles[0].Since, Board().Vehicles[0].Last));
        Assert.Equal((2, Second), (Board(most: 1).InAll, Assert.Single(Board(most: 1).Vehicles).Vin));

        Crew.Done(_floor.Release());
        Assert.Equal(Second, Assert.Single(Board().Vehicles).Vin);
        Story.Run(_floor.Station, [("lamp", Pass)]);
        Assert.Equal([null, "returned"], Board().Vehicles.Select(one => one.State));
    }

    [Fact]
    public void Each_thing_that_keeps_it_names_who_can_act_next()
    {
        _floor.Run(("lamp", Fail));
        Assert.Equal([("step", "operator"), ("nonconformity", "repairer")], Next());

        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "bulb", []));
        Assert.Equal([("step", "operator"), ("nonconformity", "operator")], Next());

        _floor.Run(("lamp", Pass));
        Assert.Empty(Next());
        Assert.Equal([("route", "operator")], Next("startup", "roller"));
        Assert.Equal([("route", "engineer")], Next([]));

        Crew.Done(_floor.Office.Open(_floor.Crew["opal"], SampleRun.Vin, "scratch", null, "seen"));
        Crew.Done(_floor.Office.Repair(_floor.Crew["rita"], "nc-000002", "polished", []));
        Assert.Equal([("nonconformity", "quality")], Next());
        Crew.Done(_floor.Office.Inspect(_floor.Crew["edda"], "nc-000002", true, "fine"));
        Assert.Equal("give a concession", Assert.Single(Board().Vehicles[0].Obstacles).Next);
        Crew.Done(_floor.Office.Concede(_floor.Crew["edda"], _floor.Crew["quinn"], "nc-000002", "does not show"));

        Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([SampleRun.Vin]), "look at it"));
        Assert.Equal([("hold", "quality")], Next());
        Story.Run(_floor.Station, [("lamp", Pass)], ends: false);
        Assert.Equal([("run", "operator"), ("hold", "quality")], Next());
    }

    [Fact]
    public void A_vehicle_with_two_numbers_stands_there_once()
    {
        _floor.Run(("lamp", Pass));
        Crew.Done(_floor.Crew.Office.Vins.Correct(_floor.Crew["quinn"], SampleRun.Vin, Second, "misread", false));
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Second);
        Assert.Equal(Second, Assert.Single(Board().Vehicles).Vin);

        Crew.Done(_floor.Crew.Office.Releases.Sign(_floor.Crew["quinn"], Second, Floor.Route));
        Assert.Equal(0, Board().InAll);
    }

    [Fact]
    public void The_short_way_to_what_is_open_says_the_same_as_the_whole_history() => Gen.Select(Gen.Int[0, 3], Gen.Int[0, 26], Gen.Bool).Array[1, 8].Sample(
        story =>
        {
            using var floor = new Floor();
            string? whole = null;
            foreach (var (what, verdicts, ends) in story)
            {
                var found = ((string[])["horn", "lamp", "wiper"]).Select((step, at) => (step, Counted: (verdicts / (int)Math.Pow(3, at) % 3) switch { 0 => Fail, 1 => None, _ => Pass })).ToArray();
                if (what > 0 || whole is null) whole = Story.Run(floor.Station, found, ends: ends, kind: what == 1 ? "roller" : "startup");
                else Story.Run(floor.Station, found[..1], of: whole, ends: ends);
            }

            var kinds = floor.Record.Vehicles.Of(SampleRun.Vin).Kinds;
            var expected = kinds.SelectMany(kind => kind.Unfinished.Concat(kind.Open.Select(step => $"{step.Step} in run {step.Run}")).Concat(kind.HasJudged ? [] : [kind.Run.Run]));
            var told = floor.Record.Releases.Board(9, _ => [.. kinds.Select(kind => kind.StationKind)]).Vehicles.Single().Obstacles.Where(one => one.Kind is "run" or "step").ToList();
            Assert.Equal(expected.Count(), told.Count);
            Assert.All(expected.Zip(told), pair => Assert.EndsWith(pair.First.Split(' ')[^1], pair.Second.Text.Replace(" has not ended", "", StringComparison.Ordinal).Replace(" judged nothing", "", StringComparison.Ordinal), StringComparison.Ordinal));
        },
        iter: 40,
        threads: 1);

    private static DateTimeOffset At(int hours) => DateTimeOffset.UnixEpoch.AddHours(hours);

    private ReleaseBoard Board(int most = 50) => _floor.Record.Releases.Board(most, _ => Floor.Route);

    private IEnumerable<(string Kind, string Who)> Next(params string[] route) =>
        _floor.Record.Releases.Board(9, _ => [.. route]).Vehicles.Single().Obstacles.Select(one => (one.Kind, one.Who));

    private IEnumerable<(string Kind, string Who)> Next() => Next([.. Floor.Route]);

    public void Dispose() => _floor.Dispose();
}
