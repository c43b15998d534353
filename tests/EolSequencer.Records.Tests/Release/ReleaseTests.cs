using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Release;

/// <summary>No vehicle leaves with anything open.</summary>
public sealed class ReleaseTests : IDisposable
{
    private readonly Floor _floor = new();

    [Fact]
    public void A_vehicle_that_passed_its_route_is_released_by_quality_once_and_sealed()
    {
        var run = _floor.Run(("lamp", Pass));
        foreach (var other in (string[])["opal", "rita", "edda", "adm"]) _floor.Crew.Refused(Refusal.NotAllowed, () => _floor.Release(other));

        var released = Crew.Done(_floor.Release());

        Assert.Equal("released", released.State);
        Assert.Equal([run], released.Runs);
        Assert.Contains("is released already, by quinn", _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Release("quade")));
        Assert.Equal("release-signed", _floor.Crew.Acts()[^1]);
        _floor.Crew.AssertWhole();
        _floor.Crew.Folder.Tamper("DELETE FROM seal WHERE ledger = (SELECT max(n) FROM ledger)");
        Assert.False(_floor.Record.Verify().IsWhole);
    }

    [Fact]
    public void Without_the_whole_route_there_is_no_release()
    {
        Assert.Contains("never run as a whole", Refused());
        Story.Run(_floor.Station, [("lamp", Pass)], only: ["lamp"]);
        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal);
        Assert.Contains("never run as a whole", Refused());
        _floor.Run(("lamp", Pass));

        Assert.Contains("'roller' of the route", _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Crew.Office.Releases.Sign(_floor.Crew["quinn"], SampleRun.Vin, ["startup", "roller"])));
        Assert.Contains("no route", _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Crew.Office.Releases.Sign(_floor.Crew["quinn"], SampleRun.Vin, [])));
        _floor.Crew.Refused(Refusal.Malformed, () => _floor.Crew.Office.Releases.Sign(_floor.Crew["quinn"], "../x", Floor.Route));
    }

    [Theory]
    [InlineData(Fail, "lamp is fail")]
    [InlineData(Error, "lamp is error")]
    [InlineData(Inconclusive, "lamp is inconclusive")]
    [InlineData(None, "judged nothing")]
    public void Only_pass_releases(Model.Judging.Verdict counted, string why)
    {
        _floor.Run(("lamp", counted));

        Assert.Contains(why, Refused());
    }

    [Fact]
    public void An_unfinished_run_another_station_kind_and_what_a_person_saw_speak_against_it()
    {
        _floor.Run(("lamp", Pass));
        Story.Run(_floor.Station, [("brake", Fail)], kind: "roller");
        Assert.Contains("brake is fail", Refused());
        Story.Run(_floor.Station, [("brake", Pass)], kind: "roller");
        Assert.True(_floor.Ready.IsReady, string.Join('\n', _floor.Ready.Against));

        Crew.Done(_floor.Office.Open(_floor.Crew["opal"], SampleRun.Vin, "scratch", null, "seen"));
        Assert.Contains("nc-000002 (scratch) is open", Refused());
        Crew.Done(_floor.Office.Concede(_floor.Crew["edda"], _floor.Crew["quinn"], "nc-000002", "does not show"));
        Story.Run(_floor.Station, [("lamp", Pass)], ends: false);
        Assert.Contains("has not ended", Refused());
    }

    [Fact]
    public void A_vehicle_that_returns_is_released_anew()
    {
        _floor.Run(("lamp", Pass));
        Crew.Done(_floor.Release());
        Crew.Done(_floor.Office.Open(_floor.Crew["opal"], SampleRun.Vin, "scratch", null, "seen at the customer's"));
        Assert.Equal("returned", _floor.Ready.State);
        Assert.Contains("scratch", Refused());

        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "painted", []));
        Crew.Done(_floor.Office.Inspect(_floor.Crew["quade"], "nc-000001", passed: true, "gone"));
        Assert.Equal("released", Crew.Done(_floor.Release()).State);
    }

    [Fact]
    public void A_hold_keeps_it_back_until_it_is_lifted()
    {
        _floor.Run(("lamp", Pass));
        var hold = Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([], Station: "startup_1"), "meter was wrong"));
        Assert.Contains("meter was wrong", Refused());
        Crew.Done(_floor.Crew.Office.Holds.Lift(_floor.Crew["quinn"], hold.Id, "measured again"));

        Crew.Done(_floor.Release());
    }

    public void Dispose() => _floor.Dispose();

    [Fact]
    public void A_released_vehicle_that_is_run_again_has_returned_from_its_first_event_on()
    {
        _floor.Run(("lamp", Pass));
        Crew.Done(_floor.Release());
        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal);
        Assert.Equal("released", _floor.Ready.State);

        Story.Run(_floor.Station, [], ends: false, only: ["lamp"]);

        Assert.Equal("returned", _floor.Ready.State);
        Assert.Equal("vehicle-returned", _floor.Crew.Acts()[^1]);
        var run = _floor.Run(("lamp", Pass));
        Assert.Equal("released", Crew.Done(_floor.Release()).State);
        Assert.Equal([run], _floor.Ready.Runs);
        _floor.Crew.AssertWhole();
    }

    [Fact]
    public void What_was_judged_with_other_options_is_run_again_before_the_release()
    {
        string[] route = ["startup", "roller"];
        string Against() => string.Join('\n', _floor.Record.Releases.Of(SampleRun.Vin, [.. route]).Against);
        Story.Run(_floor.Station, [("brake", Pass)], kind: "roller");
        var run = Story.Run(_floor.Station, [("lamp", Pass)], with: begun => begun with { Order = begun.Order with { Options = begun.Order.Options.SetItem("drive", new Model.Values.TextValue("fwd")) } });

        Assert.Equal("order-changed", _floor.Crew.Acts()[^1]);
        Assert.Contains($"station kind 'roller': run startup_1-000001 was for another order than run {run} (drive: 'adw' → 'fwd'); run it there again", Against());

        Story.Run(_floor.Station, [("brake", Pass)], kind: "roller", with: begun => begun with { Order = begun.Order with { Options = begun.Order.Options.SetItem("drive", new Model.Values.TextValue("fwd")) } });
        Assert.Empty(Against());
        _floor.Crew.AssertWhole();
    }

    [Fact]
    public void Other_facts_of_the_order_are_recorded_and_speak_against_nothing()
    {
        _floor.Run(("lamp", Pass));
        Story.Run(_floor.Station, [("lamp", Pass)], with: begun => begun with { Order = begun.Order with { Facts = begun.Order.Facts.SetItem("software", new Model.Values.TextValue("00483")) } });

        Assert.Equal("order-changed", _floor.Crew.Acts()[^1]);
        Assert.True(_floor.Ready.IsReady, string.Join('\n', _floor.Ready.Against));
    }

    private string Refused() => _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Release());
}
