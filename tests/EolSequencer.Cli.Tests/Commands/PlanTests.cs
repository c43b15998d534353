using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>The plan of a sequence is read by a person who plans a station, and by a build server.</summary>
public sealed class PlanTests
{
    private const string Startup = "sequences/demo/startup/startup.yaml";

    /// <summary>The numbers of combinations and of judged steps stand, counted otherwise, at the head of the demo sequence.</summary>
    [Fact]
    public void The_demo_sequence_is_planned_for_every_combination_that_is_built()
    {
        var outcome = Eol.Run("check", "--plan", Startup);

        Assert.Equal(0, outcome.Code);
        Assert.Contains("startup: 48 combinations (all but 16 impossible ones);", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("209 .. 223 judged", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("awd    electric    double  heated   alloy  no", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("electric    double  heated   alloy  yes", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_reads_the_plan_as_json()
    {
        var outcome = Eol.Run("check", "--plan", Startup, "--json");

        Assert.Equal(0, outcome.Code);
        var plan = Assert.Single(JsonDocument.Parse(outcome.Output).RootElement.GetProperty("plans").EnumerateArray());
        Assert.Equal((360, false, 16), (plan.GetProperty("cycleTimeSeconds").GetInt32(), plan.GetProperty("pairwise").GetBoolean(), plan.GetProperty("impossible").GetInt32()));
        Assert.Equal(48, plan.GetProperty("combinations").GetArrayLength());
        Assert.All(plan.GetProperty("combinations").EnumerateArray(), one => Assert.InRange(one.GetProperty("plannedSeconds").GetDouble(), 60, 360));
    }

    [Fact]
    public void What_is_no_sequence_has_no_plan()
    {
        var outcome = Eol.Run("check", "--plan", "sequences/demo/plant.yaml");

        Assert.Equal(2, outcome.Code);
        Assert.Contains("PLT004", outcome.Output, StringComparison.Ordinal);
    }
}
