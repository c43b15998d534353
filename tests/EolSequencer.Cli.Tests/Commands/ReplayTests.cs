using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using EolSequencer.Cli.Tests.Kit;
using Snapshooter.Xunit3;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>A recorded run is asked what another revision would have said, and a record that may not be believed is refused.</summary>
public sealed partial class ReplayTests : IDisposable
{
    private const string Id = "startup_1-000001";

    private readonly Eol _eol = new();
    private readonly PlantCopy _plant = new();

    [Fact]
    public void A_changed_revision_shows_what_comes_out_otherwise_and_what_the_record_does_not_tell()
    {
        _eol.Startup("--seed", "7");
        var sequence = _plant.Put("startup/startup.yaml", File.ReadAllText(Path.Combine(_plant.Root, "startup", "startup.yaml"))
            .Replace("revision: 1", "revision: 2", StringComparison.Ordinal)
            .Replace("takes: .. 10 s", "takes: .. 1 s", StringComparison.Ordinal)
            .Replace("""edges(bus.turn_lamp["left"]) >= 4""", """edges(bus.turn_lamp["left"]) >= 3""", StringComparison.Ordinal));
        Change("vehicle-types/orrin.yaml", "tyre_pressure: 240 .. 250 kPa", "tyre_pressure: 245.5 .. 250 kPa");

        var outcome = Replay("--with", sequence);

        Assert.Equal(1, outcome.Code);
        Snapshot.Match(Counts().Replace(outcome.Output.ReplaceLineEndings("\n"), "N")); // how many steps the demo has is not what this is about
    }

    [Fact]
    public void An_unchanged_run_is_judged_by_what_the_record_keeps_of_its_sequence()
    {
        _eol.Startup("--seed", "7", "--inject", "lamp_open=low_left");

        var outcome = Replay("--json");

        Assert.True(outcome.Code == 0, outcome.ToString());
        var answer = JsonDocument.Parse(outcome.Output).RootElement;
        Assert.Equal((0, 0, "fail", "fail"), (
            answer.GetProperty("changed").GetArrayLength(), answer.GetProperty("undecidable").GetArrayLength(),
            answer.GetProperty("then").GetProperty("verdict").GetString(), answer.GetProperty("now").GetProperty("verdict").GetString()));
    }

    [Fact]
    public void What_cannot_be_replayed_is_told()
    {
        _eol.Startup("--only", "rest");
        Refused(Eol.Run("replay", "startup_1-000099", "--data", _eol.Data), 2, "has no run 'startup_1-000099'");
        Refused(Eol.Run("replay", Id, "--data", _eol.Data + "-not"), 2, "there is no record");

        var sequence = Change("startup/startup.yaml", "takes: .. 10 s", "takes: .. 10 V");
        Refused(Replay("--with", sequence), 2, "error UNT");

        Change("startup/startup.yaml", "takes: .. 10 V", "takes: .. 10 s");
        Change("startup/startup.yaml", "vehicle-type: orrin", "vehicle-type: other");
        Change("vehicle-types/orrin.yaml", "vehicle-type: orrin", "vehicle-type: other");
        Refused(Replay("--with", sequence), 2, "is of a vehicle of type 'orrin', the sequence 'startup' tests 'other'");
    }

    [Fact]
    public void A_record_that_was_changed_is_refused_or_marked()
    {
        _eol.Startup("--only", "rest", "--seed", "7");
        ForgedRecord.Change(_eol.Data, "rest.voltage", bytes =>
        {
            var at = Encoding.UTF8.GetString(bytes).IndexOf("\"v\":\"12", StringComparison.Ordinal);
            Assert.True(at > 0);
            bytes[at + "\"v\":\"1".Length] = (byte)'3';
        });

        Refused(Replay(), 3, "the record is not as it was written: event");
        var marked = Replay("--unverified");
        Assert.Contains("UNVERIFIED", marked.Output, StringComparison.Ordinal);
        Assert.Contains("12.40 .. 12.90 V", marked.Output, StringComparison.Ordinal);
        Assert.Contains("\"unverified\": \"event", Replay("--unverified", "--json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_of_some_days_are_counted_and_rehearsals_only_when_asked_for()
    {
        _eol.Startup("--only", "rest");
        _eol.Startup("--seed", "7");
        var sequence = Change("startup/startup.yaml", "takes: .. 10 s", "takes: .. 1 s");
        string[] days = ["replay", "--from", "2026-01-01", "--to", "2999-12-31", "--with", sequence, "--data", _eol.Data];

        Refused(Eol.Run(days), 2, "--rehearsals asks for rehearsals");
        Refused(Eol.Run([.. days, "--rehearsals", "--station", "startup_9"]), 2, "has no rehearsal of 'startup' in these days");
        var table = Eol.Run([.. days, "--rehearsals"]);
        Assert.True(table.Code == 1, table.ToString());
        foreach (var line in new[] { "left out, done only in part: 1", "coding.awake", "then    100.00 % (20.65 .. 100.00 %)", "now     0.00 %", "0 gained, 1 lost" }) Assert.Contains(line, table.Output, StringComparison.Ordinal);

        var answer = JsonDocument.Parse(Eol.Run([.. days, "--rehearsals", "--json"]).Output).RootElement;
        var step = answer.GetProperty("steps").EnumerateArray().Single(one => one.GetProperty("step").GetString() == "coding.awake");
        Assert.Equal((1, 1, 1), (step.GetProperty("then").GetProperty("pass").GetInt32(), step.GetProperty("now").GetProperty("fail").GetInt32(), step.GetProperty("changed").GetInt32()));
        Assert.Equal("coding.awake", Assert.Single(Assert.Single(answer.GetProperty("changed").EnumerateArray()).GetProperty("steps").EnumerateArray()).GetString());
    }

    [Theory]
    [InlineData("2026-11-31", "2026-12-01", "'2026-11-31' is no day")]
    [InlineData("2026-12-02", "2026-12-01", "before they begin")]
    [InlineData("1.12.2026", "2026-12-01", "'1.12.2026' is no day")]
    public void Days_that_are_none_are_told(string from, string to, string mentions) =>
        Refused(Eol.Run("replay", "--from", from, "--to", to, "--with", "x.yaml"), 2, mentions);

    [Fact]
    public void A_run_and_days_at_once_or_neither_are_refused()
    {
        Refused(Eol.Run("replay"), 2, "either a run or the days");
        Refused(Eol.Run("replay", Id, "--from", "2026-12-01", "--to", "2026-12-01"), 2, "either a run or the days");
        Refused(Eol.Run("replay", "--from", "2026-12-01", "--to", "2026-12-01"), 2, "--with is missing");
    }

    public void Dispose()
    {
        _eol.Dispose();
        _plant.Dispose();
    }

    [GeneratedRegex(@"\d+(?= pass,| not judged)|(?<=of )\d+")]
    private static partial Regex Counts();

    private static void Refused(Eol.Outcome outcome, int code, string mentions)
    {
        Assert.True(outcome.Code == code && outcome.Output.Contains(mentions, StringComparison.Ordinal), outcome.ToString());
        Assert.DoesNotContain("   at ", outcome.Output, StringComparison.Ordinal);
    }

    private Eol.Outcome Replay(params string[] more) => Eol.Run(["replay", Id, "--data", _eol.Data, .. more]);

    private string Change(string file, string old, string young)
    {
        var text = File.ReadAllText(Path.Combine(_plant.Root, file));
        Assert.Contains(old, text, StringComparison.Ordinal);
        return _plant.Put(file, text.Replace(old, young, StringComparison.Ordinal));
    }
}
