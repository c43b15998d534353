using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>Whoever begins a shift sees whether the station may run, and what to do when it may not.</summary>
public sealed class FitnessTests : IDisposable
{
    private const string Station = "sequences/demo/stations/startup.yaml";
    private const string Reference = "GFVREF009VF000001";

    private readonly Eol _eol = new();

    public void Dispose() => _eol.Dispose();

    [Fact]
    public void It_says_passed_after_the_check_and_failed_after_one_with_a_meter_that_is_off()
    {
        var check = Eol.Run("run", "--station", Station, "--vin", Reference, "--data", _eol.Data);
        Assert.True(check.Code == 0, check.ToString());
        Assert.Equal((0, "passed"), Look());

        Assert.Equal(1, Eol.Run("run", "--station", Station, "--vin", Reference, "--data", _eol.Data, "--inject", "meter_offset=0.6").Code);
        Assert.Equal((1, "failed"), Look());
        var told = Eol.Run("fitness", "--station", Station, "--data", _eol.Data);
        Assert.Contains($"eol run --station {Station} --vin {Reference}", told.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(2, Eol.Run("fitness", "--station", "sequences/demo/plant.yaml", "--data", _eol.Data).Code);
    }

    private (int Code, string? State) Look()
    {
        var outcome = Eol.Run("fitness", "--station", Station, "--data", _eol.Data, "--json");
        using var json = JsonDocument.Parse(outcome.Output);
        return (outcome.Code, json.RootElement.GetProperty("check").GetProperty("state").GetString());
    }
}
