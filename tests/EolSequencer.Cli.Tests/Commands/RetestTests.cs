using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>After a repair only what hangs on it is tested again, and the vehicle's history says what that came to.</summary>
public sealed class RetestTests : IDisposable
{
    private const string Vin = "GFVRRNFP7VF100231";
    private const string Run = "startup_1-000001";

    private readonly Eol _eol = new();

    [Fact]
    public void What_failed_is_repeated_by_the_records_own_text_and_makes_the_vehicle_good()
    {
        Assert.Equal(1, _eol.Startup("--inject", "lamp_open=tail_left").Code);
        Assert.Equal(1, Vehicle().Code);

        using var plant = new PlantCopy();
        plant.Put("startup/startup.yaml", "nothing that loads");
        var retest = Eol.Run("run", "--station", Path.Combine(plant.Root, "stations", "startup.yaml"), "--retest", Run, "--data", _eol.Data, "--json");
        Assert.True(retest.Code == 0, retest.ToString());
        using (var json = JsonDocument.Parse(retest.Output))
        {
            var steps = json.RootElement.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("step").GetString()!).ToList();
            Assert.Contains("lights.rear", steps);
            Assert.Contains(steps, step => step.StartsWith("ignition.", StringComparison.Ordinal));
            Assert.DoesNotContain(steps, step => step.StartsWith("horn.", StringComparison.Ordinal));
        }

        var vehicle = Vehicle("--json");
        Assert.True(vehicle.Code == 0, vehicle.ToString());
        using var state = JsonDocument.Parse(vehicle.Output);
        var startup = state.RootElement.GetProperty("stationKinds")[0];
        Assert.Equal([Run, "startup_1-000002"], [startup.GetProperty("run").GetString(), startup.GetProperty("retests")[0].GetString()]);
        Assert.True(startup.GetProperty("passed").GetBoolean());
        Assert.False(startup.GetProperty("firstTimeThrough").GetBoolean());
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);

        Refused("nothing to repeat", "--retest", Run);
    }

    [Fact]
    public void A_retest_that_cannot_tell_anything_is_refused_before_a_vehicle_is_touched()
    {
        Assert.Equal(0, _eol.Startup("--only", "rest").Code);

        Refused("a retest names a whole run", "--retest", Run);
        Refused("has no run 'startup_1-000009'", "--retest", "startup_1-000009");
        Refused("has no run", "--retest", "../../etc/passwd");
        Refused("has no run", "--retest", "' OR 1=1 --");
        Refused("leave --only out", "--retest", Run, "--only", "rest");
        Refused("leave --order out", "--retest", Run, "--order", "sequences/demo/orders/FV-100231.yaml");
        Assert.Equal(4, Vehicle().Code);
    }

    [Fact]
    public void A_newer_revision_is_taken_when_it_is_named_and_another_vehicle_is_not()
    {
        Assert.Equal(1, _eol.Startup("--inject", "lamp_open=tail_left").Code);
        using var plant = new PlantCopy();
        var file = plant.Put("startup/startup.yaml", File.ReadAllText(Path.Combine(plant.Root, "startup", "startup.yaml")).Replace("revision: 1", "revision: 2", StringComparison.Ordinal));

        Refused("here stands GFVRRNFP7VF100999", "--retest", Run, "--vin", "GFVRRNFP7VF100999");
        var retest = Eol.Run("run", file, "--station", "sequences/demo/stations/startup.yaml", "--retest", Run, "--data", _eol.Data);
        Assert.True(retest.Code == 0, retest.ToString());
        Assert.Contains("revision 2", retest.Output, StringComparison.Ordinal);
        Assert.Contains("retest", Eol.Run("show", "--rehearsals", "--data", _eol.Data).Output, StringComparison.Ordinal);
    }

    public void Dispose() => _eol.Dispose();

    private Eol.Outcome Vehicle(params string[] more) => Eol.Run(["vehicle", Vin, "--rehearsals", "--data", _eol.Data, .. more]);

    private void Refused(string why, params string[] args)
    {
        var refused = Eol.Run(["run", "--station", "sequences/demo/stations/startup.yaml", "--data", _eol.Data, .. args]);
        Assert.True(refused.Code == 2, refused.ToString());
        Assert.Contains(why, refused.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }
}
