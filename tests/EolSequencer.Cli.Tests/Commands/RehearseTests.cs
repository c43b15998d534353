using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>A campaign as its user has it: begun, stopped, gone on with, read again; on a sequence of a few steps.</summary>
public sealed class RehearseTests : IDisposable
{
    private const string Brief = """
        sequence: brief
        title: Brief
        revision: 1
        vehicle-type: orrin
        station-kind: startup
        cycle-time: 60 s
        devices: { bus: vehicle-bus, meter: dc-meter }
        defaults: { within: 5 s, on-fail: continue }
        prepare:
          - { step: session, do: bus.extended_session }
        steps:
          - { step: voltage, read: meter.battery_voltage, expect: limits.battery_rest, class: safety }
          - { step: transport_mode, read: bus.transport_mode, expect: yes }
          - { step: crash_data, read: bus.crash_events, expect: equals 0, class: safety }
          - { step: sums, compute: 1 + 1, expect: 1 .. 9 }
        """;

    private readonly PlantCopy _plant = new();

    public void Dispose() => _plant.Dispose();

    private string Sequence => _plant.Put("brief/brief.yaml", Brief + "\n");

    private string Campaign => Path.Combine(_plant.Root, "brief.campaign");

    [Theory]
    [InlineData("write SEQUENCE, or --report FILE for a campaign that has run")]
    [InlineData("--report runs nothing: leave SEQUENCE out", "a.yaml", "--report", "b")]
    [InlineData("--seeds counts from 1", "a.yaml", "--seeds", "0")]
    [InlineData("--cores counts from 1", "a.yaml", "--cores", "0")]
    [InlineData("there is no file no/such.campaign", "--report", "no/such.campaign")]
    [InlineData("is no campaign", "--report", "README.md")]
    [InlineData("no/such.yaml", "no/such.yaml")]
    public void What_cannot_be_begun_is_refused(string why, params string[] args)
    {
        var outcome = Eol.Run(["rehearse", .. args]);
        Assert.True(outcome.Code == 2 && outcome.Output.Contains(why, StringComparison.Ordinal), outcome.ToString());
    }

    [Fact]
    public void A_campaign_names_what_escapes_and_what_cannot_fail_and_how_to_see_it_again()
    {
        var page = Path.Combine(_plant.Root, "findings.html");
        var ran = Eol.Run("rehearse", Sequence, "--seeds", "1", "--into", Campaign, "--html", page);
        Assert.True(ran.Code == 1, ran.ToString());
        Assert.Contains("faults of class safety that escape", ran.Output, StringComparison.Ordinal);
        Assert.Contains("not tried, because 'brief' uses no such instrument: line_deaf (line-signal), sound_meter_silent (sound-meter)", ran.Output, StringComparison.Ordinal);
        Assert.Contains("result: ✗ fail", ran.Output, StringComparison.Ordinal);

        var read = Eol.Run("rehearse", "--report", Campaign, "--json");
        Assert.True(read.Code == 1, read.ToString());
        using var json = JsonDocument.Parse(read.Output);
        var root = json.RootElement;
        Assert.Equal(root.GetProperty("runs").GetInt32(), root.GetProperty("done").GetInt32());
        Assert.Equal("sums", Only(root.GetProperty("steps"), step => step.GetProperty("judged").GetBoolean() && step.GetProperty("faults").GetInt32() == 0).GetProperty("step").GetString());
        var battery = Only(root.GetProperty("faults"), fault => fault.GetProperty("fault").GetString() == "battery_voltage");
        Assert.Equal("voltage", battery.GetProperty("firstStep").GetString());
        Assert.Empty(root.GetProperty("falseAlarms").EnumerateArray());

        var horn = Only(root.GetProperty("faults"), fault => fault.GetProperty("fault").GetString() == "horn_open");
        var again = horn.GetProperty("escapes")[0].GetProperty("again").GetString()!.Split(' ');
        Assert.Equal("eol", again[0]);
        using var eol = new Eol();
        var shown = Eol.Run([.. again[1..], "--data", eol.Data]);
        Assert.True(shown.Code == 0, shown.ToString());

        Assert.Equal("html", XDocument.Parse(File.ReadAllText(page)).Root!.Name.LocalName);
    }

    [Fact]
    public void A_stopped_campaign_is_gone_on_with_and_a_changed_sequence_wants_another_file()
    {
        var sequence = Sequence;
        using (var first = Eol.Start("rehearse", sequence, "--seeds", "40", "--cores", "1", "--into", Campaign))
        {
            Assert.StartsWith("not tried, ", first.StandardOutput.ReadLine(), StringComparison.Ordinal);
            Assert.Contains(" of ", first.StandardOutput.ReadLine(), StringComparison.Ordinal);
            Eol.PressCtrlC(first);
            first.StandardOutput.ReadToEnd();
            Assert.True(first.WaitForExit(60_000));
            Assert.Equal(4, first.ExitCode); // nothing bad so far, and not whole
        }

        using (var before = JsonDocument.Parse(Eol.Run("rehearse", "--report", Campaign, "--json").Output))
        {
            Assert.InRange(before.RootElement.GetProperty("done").GetInt32(), 1, before.RootElement.GetProperty("runs").GetInt32() - 1);
        }

        var rest = Eol.Run("rehearse", sequence, "--seeds", "40", "--into", Campaign);
        Assert.Contains("runs are there, going on with the rest", rest.Output, StringComparison.Ordinal);
        using (var after = JsonDocument.Parse(Eol.Run("rehearse", "--report", Campaign, "--json").Output))
        {
            Assert.Equal(after.RootElement.GetProperty("runs").GetInt32(), after.RootElement.GetProperty("done").GetInt32());
        }

        _plant.Put("brief/brief.yaml", Brief.Replace("1 .. 9", "1 .. 8", StringComparison.Ordinal) + "\n");
        var other = Eol.Run("rehearse", sequence, "--seeds", "40", "--into", Campaign);
        Assert.True(other.Code == 2 && other.Output.Contains("is another campaign", StringComparison.Ordinal), other.ToString());
    }

    private static JsonElement Only(JsonElement list, Func<JsonElement, bool> isWanted) => Assert.Single(list.EnumerateArray(), element => isWanted(element));
}
