using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Parts;

/// <summary>Which part is on which vehicle can be shown years later, and no part is on two vehicles unnoticed.</summary>
public sealed class PartSerialTests : IDisposable
{
    private const string Second = "TESTVXN09AA000018";

    private readonly Floor _floor = new();

    private IPartSerials Serials => _floor.Record.Serials;

    [Fact]
    public void A_new_serial_replaces_the_former_one_and_both_are_shown()
    {
        var first = Fit(SampleRun.Vin, ("gateway", "G-1"), ("lock[fl]", "L-1"));
        var second = Fit(SampleRun.Vin, ("gateway", "G-2"));

        var parts = _floor.Record.Vehicles.Of(SampleRun.Vin).Parts;

        Assert.Equal([("gateway", "G-1", first, true), ("lock[fl]", "L-1", first, false), ("gateway", "G-2", second, false)], parts.Select(part => (part.Name, part.Serial, part.Run, part.Replaced)));
        Assert.Equal("label_gateway", parts[0].Step);
        Assert.True(parts[0].Found < parts[1].Found);
        Assert.True(_floor.Record.Verify().IsWhole);
    }

    [Fact]
    public void A_part_is_where_it_was_found_last()
    {
        var run = Fit(SampleRun.Vin, ("gateway", "G-1"), ("lock[fl]", "L-1"));

        Assert.Equal(new SerialAnswer.There(SampleRun.Vin, new PartName("gateway", ""), run), Ask(Second, "gateway", "G-1"));
        Assert.IsType<SerialAnswer.Nowhere>(Ask(SampleRun.Vin, "gateway", "G-1"));
        Assert.IsType<SerialAnswer.Nowhere>(Ask(Second, "gateway", "G-9"));
        Assert.IsType<SerialAnswer.Nowhere>(Ask(Second, "radio", "G-1"));
        Assert.IsType<SerialAnswer.There>(Ask(SampleRun.Vin, "lock[fr]", "L-1"));
        Assert.IsType<SerialAnswer.Nowhere>(Ask(SampleRun.Vin, "lock[fl]", "L-1"));

        Fit(SampleRun.Vin, ("gateway", "G-2"));
        Assert.IsType<SerialAnswer.Nowhere>(Ask(Second, "gateway", "G-1"));
    }

    [Fact]
    public void Rehearsals_know_and_tell_nothing()
    {
        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal, parts: [("gateway", "G-1")]);

        Assert.IsType<SerialAnswer.Nowhere>(Ask(Second, "gateway", "G-1"));
        Assert.Empty(_floor.Record.Vehicles.Of(SampleRun.Vin).Parts);
        Assert.Single(_floor.Record.Vehicles.Of(SampleRun.Vin, RunMode.Rehearsal).Parts);
    }

    [Fact]
    public void Two_stations_that_found_it_at_the_same_moment_keep_both_vehicles()
    {
        Fit(SampleRun.Vin, ("gateway", "G-1"));
        Fit(Second, ("gateway", "G-1"));

        Assert.Contains($"serial 'G-1' of part gateway is on vehicle {Second} too", string.Join('\n', _floor.Ready.Against));

        Fit(Second, ("gateway", "G-2"));
        Assert.True(_floor.Ready.IsReady, string.Join('\n', _floor.Ready.Against));
    }

    [Fact]
    public void A_hold_finds_vehicles_by_the_serial_of_a_part()
    {
        Fit(SampleRun.Vin, ("gateway", "G-1"));
        Fit(Second, ("gateway", "G-2"));

        Assert.Equal([SampleRun.Vin], _floor.Record.Holds.Vehicles(new HoldQuery([], "gateway", "G-1")));
        Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([], "gateway", "G-1"), "bad solder"));
        Assert.Contains("bad solder", string.Join('\n', _floor.Ready.Against));
        Fit(SampleRun.Vin, ("gateway", "G-3"));
        Assert.True(_floor.Ready.IsReady);
    }

    [Theory]
    [InlineData("UPDATE part_serial SET serial = 'G-9' WHERE part = 'gateway'", "serial is 'G-9'")]
    [InlineData("UPDATE part_serial SET vin = 'TESTVXN09AA000018'", "vin is")]
    [InlineData("UPDATE part_serial SET mode = 'rehearsal'", "mode is")]
    [InlineData("DELETE FROM part_serial WHERE part = 'lock'", "serial 'L-1' of part lock is missing")]
    [InlineData("INSERT INTO part_serial (id, mode, vin, part, at, serial) VALUES ((1 << 20) + 1, 'production', 'x', 'y', '', 'z')", "comes from no event")]
    [InlineData("INSERT INTO part_serial (id, mode, vin, part, at, serial) VALUES ((9 << 20) + 1, 'production', 'x', 'y', '', 'z')", "belong to run row 9")]
    public void Verify_finds_a_changed_missing_and_added_row(string sql, string finding)
    {
        Fit(SampleRun.Vin, ("gateway", "G-1"), ("lock[fl]", "L-1"));
        _floor.Crew.Folder.Tamper(sql);

        Assert.Contains(_floor.Record.Verify().Findings, found => found.ToString().Contains(finding, StringComparison.Ordinal));
    }

    [Fact]
    public void A_record_that_cannot_be_read_gives_an_answer_and_no_exception()
    {
        var serials = Serials;
        _floor.Crew.Folder.Tamper("DROP TABLE part_serial");

        Assert.IsType<SerialAnswer.Unknown>(serials.Elsewhere(Vin.TryParse(Second, CheckDigitRule.Off).Vin!, new PartName("gateway", ""), "G-1"));
    }

    private SerialAnswer Ask(string vin, string part, string serial) => Serials.Elsewhere(Vin.TryParse(vin, CheckDigitRule.Off).Vin!, PartName.Read(part), serial);

    private string Fit(string vin, params (string Part, string Serial)[] parts) => Story.Run(_floor.Station, [("lamp", Pass)], vin: vin, parts: parts);

    public void Dispose() => _floor.Dispose();
}
