using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Release;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Correcting;

/// <summary>A wrong number loses nothing of a vehicle, and no correction lets one leave that could not leave before.</summary>
public sealed class VinTests : IDisposable
{
    private const string Wrong = SampleRun.Vin;
    private const string Right = "TESTVXN09AA000018";
    private const string Third = "TESTVXN02AA000020";

    private readonly Floor _floor = new();

    [Fact]
    public void The_right_number_has_all_that_was_recorded_under_the_wrong_one()
    {
        var run = Story.Run(_floor.Station, [("lamp", Fail)], parts: [("gateway", "G-1")]);
        var before = _floor.Crew.Folder.Ask<string>("SELECT hex(hash) FROM event ORDER BY id");
        Correct(Wrong, Right);

        foreach (var asked in (string[])[Wrong, Right])
        {
            var vehicle = _floor.Record.Vehicles.Of(asked);
            Assert.Equal((Right, run), (vehicle.Vin, vehicle.At("startup")!.Run.Run));
            Assert.Equal(new VinCorrection(Wrong, Right, "misread label", "quinn"), Assert.Single(vehicle.Corrections));
            Assert.Equal("G-1", Assert.Single(vehicle.Parts).Serial);
            Assert.Equal("nc-000001", Assert.Single(_floor.Record.Nonconformities.List(asked)).Id);
            Assert.Equal(run, Assert.Single(_floor.Record.Runs.List(new() { Vin = asked })).Run);
        }

        Assert.Equal(before, _floor.Crew.Folder.Ask<string>("SELECT hex(hash) FROM event ORDER BY id"));
        Assert.True(_floor.Record.Verify().IsWhole);
    }

    [Fact]
    public void Runs_under_both_numbers_are_one_history_and_a_passed_step_closes_what_the_other_number_had()
    {
        Story.Run(_floor.Station, [("lamp", Fail)]);
        Correct(Wrong, Right);
        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "bulb", []));
        Assert.Contains("nc-000001", Against(Right));

        var run = Story.Run(_floor.Station, [("lamp", Pass)], vin: Right);
        Assert.Equal("closed", _floor.Find("nc-000001").State);
        Story.Run(_floor.Station, [("lamp", Fail)], vin: Right);
        Assert.Equal("nc-000002", _floor.Open.Id);
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Right);

        Assert.Contains($"{Wrong} was corrected to {Right}", Against(Wrong));
        _floor.Crew.Refused(Refusal.AgainstRule, () => Sign(Wrong));
        Assert.Equal("released", Crew.Done(Sign(Right)).State);
        Assert.Equal(4, _floor.Record.Runs.List(new() { Vin = Right }).Length);
        Assert.NotEqual(run, _floor.Record.Vehicles.Of(Right).At("startup")!.Run.Run);
    }

    [Fact]
    public void A_hold_meets_the_vehicle_under_either_number()
    {
        _floor.Run(("lamp", Pass));
        Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([Wrong]), "look at it"));
        Correct(Wrong, Right);

        Assert.Contains("look at it", Against(Right));
        Assert.Equal([Right], _floor.Record.Holds.Vehicles(new HoldQuery([Wrong])));
        Crew.Done(_floor.Crew.Office.Holds.Lift(_floor.Crew["quinn"], "hold-0001", "looked"));
        Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([], "drive", "adw"), "axles"));
        Assert.Equal([Right], _floor.Record.Holds.Vehicles(new HoldQuery([], "drive", "adw")));
        Assert.Contains("axles", Against(Right));
    }

    [Fact]
    public void Corrections_follow_one_another_and_are_taken_back_the_newest_first()
    {
        var run = _floor.Run(("lamp", Pass));
        Correct(Wrong, Right);
        Correct(Right, Third);
        Assert.Equal((Third, run), (_floor.Record.Vehicles.Of(Wrong).Vin, _floor.Record.Vehicles.Of(Third).At("startup")!.Run.Run));
        Assert.Equal([Wrong, Right], _floor.Record.Vins.List().Select(one => one.Wrong).Order(StringComparer.Ordinal));

        Assert.Contains($"{Wrong} was corrected to {Right} before; correct {Right}", Refused(Wrong, Third));
        Assert.Contains($"was corrected to {Third} before", Refused(Right, Wrong));

        Correct(Third, Right);
        Correct(Right, Wrong);
        Assert.Empty(_floor.Record.Vins.List());
        Assert.Equal((Wrong, run), (_floor.Record.Vehicles.Of(Wrong).Vin, _floor.Record.Vehicles.Of(Wrong).At("startup")!.Run.Run));
        Assert.Empty(_floor.Record.Vehicles.Of(Right).Kinds);
        Assert.True(_floor.Record.Verify().IsWhole);
    }

    [Fact]
    public void A_number_that_has_records_of_its_own_is_another_vehicle_unless_somebody_says_that_it_is_not()
    {
        _floor.Run(("lamp", Fail));
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Right);
        Assert.Contains("say so with '--merge'", Refused(Wrong, Right));

        Correct(Wrong, Right, merge: true);

        Assert.Contains("nc-000001 (lamp) is open", Against(Right));
        Assert.Equal($"nothing that counts is recorded under {Third}", Refused(Third, Right));
    }

    [Fact]
    public void What_was_corrected_away_is_no_aim_of_another_correction()
    {
        _floor.Run(("lamp", Pass));
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Third);
        Correct(Wrong, Right);

        Assert.Contains($"{Wrong} was corrected to {Right}; correct to {Right}", Refused(Third, Wrong));
        Assert.Contains("to itself", _floor.Crew.Refused(Refusal.Malformed, () => Ask(Third, Third)));
        Assert.Contains($"{Wrong} was corrected to {Right}; open it for that number", _floor.Crew.Refused(Refusal.AgainstRule, () => _floor.Office.Open(_floor.Crew["opal"], Wrong, "scratch", null, "seen")));
    }

    [Fact]
    public void A_released_vehicle_has_returned_when_its_number_was_wrong_and_again_when_that_was_taken_back()
    {
        _floor.Run(("lamp", Pass));
        Crew.Done(_floor.Release());
        Correct(Wrong, Right);
        Assert.Equal("returned", _floor.Record.Releases.Of(Right, Floor.Route).State);

        Assert.Equal("released", Crew.Done(Sign(Right)).State);
        Correct(Right, Wrong);
        Assert.Equal("returned", _floor.Record.Releases.Of(Wrong, Floor.Route).State);
        Assert.True(_floor.Record.Verify().IsWhole);
    }

    [Fact]
    public void The_same_vehicle_under_two_numbers_is_no_other_vehicle_for_a_part()
    {
        Story.Run(_floor.Station, [("lamp", Pass)], parts: [("gateway", "G-1")]);
        SerialAnswer Ask(string vin) => _floor.Record.Serials.Elsewhere(Vin.TryParse(vin, CheckDigitRule.Off).Vin!, new PartName("gateway", ""), "G-1");
        Assert.IsType<SerialAnswer.There>(Ask(Right));

        Correct(Wrong, Right);

        Assert.IsType<SerialAnswer.Nowhere>(Ask(Right));
        Assert.Equal(Right, Assert.IsType<SerialAnswer.There>(Ask(Third)).Vin);
    }

    [Theory]
    [InlineData("opal", Wrong, Right, "x", Refusal.NotAllowed)]
    [InlineData("rita", Wrong, Right, "x", Refusal.NotAllowed)]
    [InlineData("edda", Wrong, Right, "x", Refusal.NotAllowed)]
    [InlineData("adm", Wrong, Right, "x", Refusal.NotAllowed)]
    [InlineData("quinn", "../../x", Right, "x", Refusal.Malformed)]
    [InlineData("quinn", Wrong, "' OR 1=1 --", "x", Refusal.Malformed)]
    [InlineData("quinn", Wrong, Right, "", Refusal.Malformed)]
    [InlineData("quinn", Wrong, Right, "two\nlines", Refusal.Malformed)]
    public void What_nobody_may_and_what_is_malformed_changes_nothing_and_is_noted(string by, string from, string to, string reason, Refusal refusal)
    {
        _floor.Run(("lamp", Pass));
        var acts = _floor.Crew.Acts();

        _floor.Crew.Refused(refusal, () => _floor.Crew.Office.Vins.Correct(_floor.Crew[by], from, to, reason, false));
        _floor.Crew.Refused(Refusal.Malformed, () => _floor.Crew.Office.Vins.Correct(_floor.Crew["quinn"], Wrong, Right, new string('x', 1001), false));

        Assert.Equal(acts, _floor.Crew.Acts());
        Assert.Contains(_floor.Crew.Notes, note => note.StartsWith("refused: correct a vehicle's number", StringComparison.Ordinal));
    }

    [Fact]
    public void Verify_finds_a_correction_that_nobody_made_and_a_circle_hangs_nobody()
    {
        _floor.Run(("lamp", Pass));
        Correct(Wrong, Right);
        _floor.Crew.Folder.Tamper($$"""INSERT INTO vin_correction (key, row) VALUES ('{{Right}}', '{"vin":"{{Right}}","reason":"x","corrected":"{{Wrong}}"}')""");

        Assert.NotEmpty(_floor.Record.Vehicles.Of(Wrong).Kinds);
        Assert.Contains(_floor.Record.Verify().Findings, found => found.ToString().Contains("stands in the table and in no act", StringComparison.Ordinal));
    }

    private void Correct(string from, string to, bool merge = false) => Crew.Done(Ask(from, to, merge));

    private Outcome<VinCorrection> Ask(string from, string to, bool merge = false) => _floor.Crew.Office.Vins.Correct(_floor.Crew["quinn"], from, to, "misread label", merge);

    private string Refused(string from, string to) => Ask(from, to).Refused?.Why ?? "";

    private Outcome<Readiness> Sign(string vin) => _floor.Crew.Office.Releases.Sign(_floor.Crew["quinn"], vin, Floor.Route);

    private string Against(string vin) => string.Join('\n', _floor.Record.Releases.Of(vin, Floor.Route).Against);

    public void Dispose() => _floor.Dispose();
}
