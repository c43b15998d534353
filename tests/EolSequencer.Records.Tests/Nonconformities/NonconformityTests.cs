using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Texts;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Nonconformities;

/// <summary>What was found wrong stays in view until it was shown to be right, or two persons let it pass.</summary>
public sealed class NonconformityTests : IDisposable
{
    private readonly Floor _floor = new();

    [Theory]
    [InlineData("scratch", null, null)]
    [InlineData("scratch", "anywhere", null)]
    [InlineData("leak", "oil", null)]
    [InlineData("leak", null, null)]
    [InlineData("leak", "roof", "'leak' is never at 'roof'")]
    [InlineData("dirt", null, "has no nonconformity 'dirt'; it has scratch, leak")]
    public void What_a_person_opens_stands_in_the_plants_catalogue_when_there_is_one(string code, string? place, string? why)
    {
        ImmutableArray<CatalogueCode> catalogue = [new("scratch", LocalText.Plain("Scratch"), []), new("leak", LocalText.Plain("Leak"), ["oil", "fuel"])];
        Outcome<Nonconformity> Open() => _floor.Office.Open(_floor.Crew["opal"], SampleRun.Vin, code, place, "seen", catalogue);

        if (why is null) Assert.Equal(code, Crew.Done(Open()).Code);
        else Assert.Contains(why, _floor.Crew.Refused(Refusal.Unknown, Open));
    }

    [Fact]
    public void A_failed_step_opens_one_with_what_was_found()
    {
        var run = _floor.Run(("horn", Pass), ("lamps[left].current", Fail));

        var open = _floor.Open;
        Assert.Equal(("nc-000001", "open", "lamps.current", SampleRun.Vin), (open.Id, open.State, open.Code, open.Vin));
        Assert.Equal(("startup", "lamps[left].current", run), (open.StationKind, open.Step, open.Run));
        Assert.Equal(("1.82", "A", "1.60 .. 2.40 A"), (open.Value, open.Unit, open.Window));
        _floor.Crew.AssertWhole();
    }

    [Fact]
    public void The_authors_code_the_place_pointed_at_and_the_picture_are_kept()
    {
        var journal = _floor.Station.BeginRun();
        journal.Append(SampleRun.Of(journal.Run)[0]);
        journal.Append(SampleRun.Read(2, 2000, "seen", null, Fail) with { Nonconformity = "leak", Detail = "oil", Picture = "pictures/below.svg" });
        journal.Append(new RunEnded { N = 3, At = 3000, RollUp = RollUp.Of([Fail]), Interrupted = false });

        Assert.Equal(("leak", "oil", "pictures/below.svg"), (_floor.Open.Code, _floor.Open.Place, _floor.Open.Picture));
    }

    [Theory]
    [InlineData(Pass)]
    [InlineData(None)]
    [InlineData(Inconclusive)]
    [InlineData(Error)]
    public void What_is_no_finding_on_the_vehicle_opens_none(Verdict counted)
    {
        _floor.Run(("lamp", counted));

        Assert.Empty(_floor.Record.Nonconformities.List(all: true));
    }

    [Fact]
    public void The_last_attempt_decides_and_rehearsals_never_count()
    {
        _floor.Run(("lamp", Fail), ("lamp", Pass));
        Story.Run(_floor.Station, [("lamp", Fail)], mode: RunMode.Rehearsal);
        Story.Run(_floor.Station, [("label", Fail)], notCounted: ["label"]);

        Assert.Empty(_floor.Record.Nonconformities.List(all: true));
    }

    [Fact]
    public void A_passed_retest_closes_it_and_a_failed_one_tells_the_new_finding()
    {
        var whole = _floor.Run(("lamp", Fail));
        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "bulb changed", [new("bulb", "B-77")]));
        Assert.Equal("reworked", _floor.Open.State);

        var failed = _floor.Retest(whole, ("lamp", Fail));
        Assert.Equal(("open", failed), (_floor.Open.State, _floor.Open.Run));

        _floor.Retest(whole, ("lamp", Pass));
        Assert.Equal(("closed", "rita"), (_floor.Find("nc-000001").State, _floor.Find("nc-000001").RepairedBy));
        Assert.Equal("B-77", Assert.Single(_floor.Find("nc-000001").Parts).Serial);
        _floor.Crew.AssertWhole();
    }

    [Fact]
    public void A_whole_run_closes_too_and_some_steps_alone_or_a_retest_of_an_older_run_do_not()
    {
        var older = _floor.Run(("lamp", Fail));
        _floor.Run(("lamp", Fail));
        Story.Run(_floor.Station, [("lamp", Pass)], only: ["lamp"]);
        _floor.Retest(older, ("lamp", Pass));
        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal);
        Story.Run(_floor.Station, [("lamp", Pass)], kind: "roller");
        Story.Run(_floor.Station, [("lamp", Pass)], vin: "9Z9RR1N42TF000018");
        Assert.Equal("open", _floor.Open.State);

        _floor.Run(("lamp", Pass));
        Assert.Equal("closed", _floor.Find("nc-000001").State);
    }

    [Fact]
    public void What_fails_after_it_was_closed_is_another_one()
    {
        var whole = _floor.Run(("lamp", Fail));
        _floor.Retest(whole, ("lamp", Pass));
        _floor.Retest(whole, ("lamp", Fail));

        Assert.Equal("nc-000002", _floor.Open.Id);
    }

    [Fact]
    public void A_repair_is_no_rework_what_passes_after_it_wants_a_concession()
    {
        var whole = _floor.Run(("lamp", Fail));
        Crew.Done(_floor.Office.Repair(_floor.Crew["rita"], "nc-000001", "bracket bent back", []));
        _floor.Retest(whole, ("lamp", Pass));
        Assert.Equal("wants-concession", _floor.Open.State);

        Crew.Done(_floor.Office.Concede(_floor.Crew["edda"], _floor.Crew["quinn"], "nc-000001", "bracket holds, cover does not show it"));
        Assert.Equal("conceded", _floor.Find("nc-000001").State);
    }

    [Fact]
    public void A_concession_wants_two_persons_who_may_and_holds_for_what_was_found_alone()
    {
        var whole = _floor.Run(("lamp", Fail));
        var crew = _floor.Crew;
        Assert.Contains("second person", crew.Refused(Refusal.NotAllowed, () => _floor.Office.Concede(crew["quinn"], crew["quinn"], "nc-000001", "looks good")));
        crew.Refused(Refusal.NotAllowed, () => _floor.Office.Concede(crew["quinn"], crew["edda"], "nc-000001", "looks good"));
        crew.Refused(Refusal.NotAllowed, () => _floor.Office.Concede(crew["rita"], crew["quinn"], "nc-000001", "looks good"));
        crew.Refused(Refusal.Malformed, () => _floor.Office.Concede(crew["edda"], crew["quinn"], "nc-000001", " "));
        Assert.False(_floor.Record.Vehicles.Of(SampleRun.Vin).HasPassed);

        Crew.Done(_floor.Office.Concede(crew["edda"], crew["quinn"], "nc-000001", "glows well enough"));
        Assert.True(_floor.Record.Vehicles.Of(SampleRun.Vin).HasPassed);
        Assert.Equal("nc-000001", _floor.Record.Vehicles.Of(SampleRun.Vin).At("startup")!.Steps.Single().Concession);

        _floor.Retest(whole, ("lamp", Fail));
        Assert.False(_floor.Record.Vehicles.Of(SampleRun.Vin).HasPassed);
        Assert.Equal("nc-000002", _floor.Open.Id);
        crew.Refused(Refusal.AgainstRule, () => _floor.Office.Rework(crew["rita"], "nc-000001", "too late", []));
    }

    [Fact]
    public void What_a_person_saw_is_inspected_by_another_one()
    {
        var (office, crew) = (_floor.Office, _floor.Crew);
        var seen = Crew.Done(office.Open(crew["opal"], SampleRun.Vin, "scratch", "left door", "as long as a hand"));
        Assert.Equal(("open", "scratch", "left door", "opal"), (seen.State, seen.Code, seen.Place, seen.OpenedBy));
        crew.Refused(Refusal.AgainstRule, () => office.Inspect(crew["quinn"], seen.Id, passed: true, "nothing was done, I say it is good"));

        Crew.Done(office.Rework(crew["edda"], seen.Id, "polished", []));
        Assert.Contains("somebody else", crew.Refused(Refusal.AgainstRule, () => office.Inspect(crew["edda"], seen.Id, passed: true, "I did it well")));
        crew.Refused(Refusal.NotAllowed, () => office.Inspect(crew["rita"], seen.Id, passed: true, "looks good"));
        Assert.Equal("open", Crew.Done(office.Inspect(crew["quinn"], seen.Id, passed: false, "still to be seen")).State);
        Crew.Done(office.Rework(crew["rita"], seen.Id, "painted", []));
        Assert.Equal("closed", Crew.Done(office.Inspect(crew["quinn"], seen.Id, passed: true, "gone")).State);
        crew.AssertWhole();
    }

    [Fact]
    public void What_a_step_found_only_a_retest_shows_to_be_good()
    {
        _floor.Run(("lamp", Fail));
        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "bulb changed", []));

        Assert.Contains("retest", _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Office.Inspect(_floor.Crew["quinn"], "nc-000001", passed: true, "it is lit")));
    }

    [Fact]
    public void Who_has_not_the_role_and_what_is_malformed_is_refused()
    {
        _floor.Run(("lamp", Fail));
        var (office, crew) = (_floor.Office, _floor.Crew);
        crew.Refused(Refusal.NotAllowed, () => office.Open(crew["adm"], SampleRun.Vin, "scratch", null, "seen"));
        crew.Refused(Refusal.NotAllowed, () => office.Rework(crew["opal"], "nc-000001", "bulb changed", []));
        crew.Refused(Refusal.Malformed, () => office.Open(crew["opal"], "not a VIN", "scratch", null, "seen"));
        crew.Refused(Refusal.Malformed, () => office.Open(crew["opal"], SampleRun.Vin, "../scratch", null, "seen"));
        crew.Refused(Refusal.Malformed, () => office.Open(crew["opal"], SampleRun.Vin, "scratch", "left\0", "seen"));
        crew.Refused(Refusal.Malformed, () => office.Open(crew["opal"], SampleRun.Vin, "scratch", null, new string('x', 1001)));
        crew.Refused(Refusal.Malformed, () => office.Rework(crew["rita"], "nc-000001", "", []));
        crew.Refused(Refusal.Malformed, () => office.Rework(crew["rita"], "nc-000001", "bulb", [new("bulb", "B\n77")]));
        crew.Refused(Refusal.Malformed, () => office.Rework(crew["rita"], "nc-000001", "bulb", [.. Enumerable.Repeat(new Records.Nonconformities.FittedPart("bulb", "B-1"), 51)]));
        crew.Refused(Refusal.Malformed, () => office.Rework(crew["rita"], "nc-1'; DROP TABLE hold; --", "bulb", []));
        crew.Refused(Refusal.Unknown, () => office.Rework(crew["rita"], "nc-000009", "bulb", []));
    }

    [Theory]
    [InlineData("UPDATE nonconformity SET row = replace(row, '\"open\"', '\"closed\"')")]
    [InlineData("DELETE FROM nonconformity")]
    [InlineData("INSERT INTO hold (key, row) SELECT key, row FROM nonconformity")]
    [InlineData("INSERT INTO vehicle_release (key, row) SELECT vin, row FROM nonconformity")]
    public void A_table_that_says_something_else_than_the_acts_is_found(string sql)
    {
        _floor.Run(("lamp", Fail));
        _floor.Crew.AssertWhole();
        _floor.Crew.Folder.Tamper(sql);

        Assert.Contains(_floor.Record.Verify().Findings, finding => finding.Kind == Records.Verify.FindingKind.Table);
    }

    public void Dispose() => _floor.Dispose();
}
