using System.Collections.Immutable;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Campaigns;
using EolSequencer.Rehearsal.Tests.Kit;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>The demo plant's start-up as the subject of campaigns.</summary>
internal static class DemoCampaign
{
    public static ImmutableArray<CampaignVehicle> Vehicles { get; } = CampaignVehicle.All(
        DemoPlant.Startup.Sequence!.VehicleType,
        SequenceLoader.Plan(Path.Combine(DemoPlant.Folder, "startup", "startup.yaml"), ExpressionCache.None).Plan!);

    public static CampaignPlan Plan(int seeds = 1, bool everyVehicle = false, bool pairs = false) =>
        CampaignPlan.Of(DemoPlant.Startup.Sequence!, Vehicles, new CampaignSettings(seeds, 1, everyVehicle, pairs));

    public static CampaignRunner Runner(CheckedSequence? sequence = null) =>
        new(sequence ?? DemoPlant.Startup.Sequence!, DemoPlant.Startup.Plant!, DemoPlant.Station);

    public static CampaignHead Head(int jobs) => new("fennholt", "startup_1", "startup", 1, "hash", 360_000_000, "settings", jobs, "program", "eol run startup.yaml");

    /// <summary>A campaign in a file of its own with the results of some of its jobs.</summary>
    public static CampaignFile Keep(string path, CampaignPlan plan, IEnumerable<CampaignResult> results)
    {
        var (file, why) = CampaignFile.Create(path, Head(plan.Jobs.Count), DemoPlant.Startup.Sequence!, plan);
        Assert.Null(why);
        file!.Add([.. results]);
        return file;
    }
}
