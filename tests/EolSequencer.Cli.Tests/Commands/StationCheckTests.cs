using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary><c>eol station-check</c> in the real process: what is not well is told before a vehicle waits for it.</summary>
public sealed class StationCheckTests
{
    private const string Station = "sequences/demo/stations/startup.yaml";

    [Fact]
    public void A_station_that_is_well_shows_each_device_with_what_it_is_and_a_value()
    {
        var outcome = Eol.Run("station-check", Station);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("12 of 12 control units answer", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("simulated meter M-0417", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("4 of 4 devices well", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_silent_instrument_ends_with_3_and_the_others_are_looked_at_all_the_same()
    {
        var outcome = Eol.Run("station-check", Station, "--inject", "meter_silent");
        Assert.Equal(3, outcome.Code);
        Assert.Contains("meter: identifying: silent, meter: no answer within 1000 ms", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("3 of 4 devices well", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_reads_the_same_as_json()
    {
        var outcome = Eol.Run("station-check", Station, "--inject", "meter_silent", "--json");
        Assert.Equal(3, outcome.Code);
        var document = JsonDocument.Parse(outcome.Output).RootElement;
        Assert.False(document.GetProperty("well").GetBoolean());
        var devices = document.GetProperty("devices").EnumerateArray().ToDictionary(device => device.GetProperty("role").GetString()!);
        Assert.Equal("antenna_current", devices["bus"].GetProperty("channel").GetString());
        Assert.Contains("silent", devices["meter"].GetProperty("fault").GetString(), StringComparison.Ordinal);
        Assert.False(devices["noise"].TryGetProperty("channel", out _));
    }

    [Fact]
    public void Real_equipment_that_the_program_does_not_know_is_told_with_what_it_knows()
    {
        using var plant = new PlantCopy();
        var text = File.ReadAllText(Path.Combine(plant.Root, "stations", "startup.yaml"));
        var file = plant.Put("stations/startup.yaml", text.Replace("adapter: simulated-", "adapter: foreign-", StringComparison.Ordinal));
        var outcome = Eol.Run("station-check", file);
        Assert.Equal(3, outcome.Code);
        Assert.Contains("there is no adapter 'foreign-vehicle'", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("0 of 4 devices well", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_plug_ins_that_is_not_there_is_a_slip_of_the_command_line()
    {
        var outcome = Eol.Run("station-check", Station, "--adapters", "/nowhere/adapters");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("there is no such folder", outcome.Output, StringComparison.Ordinal);
    }
}
