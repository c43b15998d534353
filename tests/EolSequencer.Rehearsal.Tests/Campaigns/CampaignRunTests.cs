using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>A campaign's result must not depend on how many cores ran it, nor on whether it was interrupted.</summary>
public sealed class CampaignRunTests
{
    private static readonly CampaignPlan Plan = DemoCampaign.Plan();
    private static readonly List<CampaignJob> Some = [.. Plan.Jobs.Where(job => job.Number % 97 == 0)];

    [Fact]
    public void Two_cores_find_what_one_finds()
    {
        var one = DemoCampaign.Runner().Run(Some, 1, CancellationToken.None).Select(Text).ToList();
        var two = DemoCampaign.Runner().Run(Some, 2, CancellationToken.None).Select(Text).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(one.Order(StringComparer.Ordinal), two);
        Assert.Equal(Some.Count, one.Count);
    }

    [Fact]
    public void A_campaign_that_is_stopped_keeps_what_had_ended_and_the_rest_makes_it_whole()
    {
        using var folder = new OwnFolder();
        var path = folder.PathOf("some.campaign");
        using var stop = new CancellationTokenSource();
        var before = new List<CampaignResult>();
        foreach (var result in DemoCampaign.Runner().Run(Some, 2, stop.Token))
        {
            before.Add(result);
            if (before.Count == 5) stop.Cancel();
        }

        Assert.InRange(before.Count, 5, Some.Count - 1);
        DemoCampaign.Keep(path, Plan, before).Dispose();

        using var again = CampaignFile.Open(path).File!;
        Assert.Equal(before.Select(result => result.Job.Number).Order(), again.Done.Order());
        again.Add([.. DemoCampaign.Runner().Run(Some.Where(job => !again.Done.Contains(job.Number)), 2, CancellationToken.None)]);

        using var whole = DemoCampaign.Keep(folder.PathOf("whole.campaign"), Plan, DemoCampaign.Runner().Run(Some, 2, CancellationToken.None));
        Assert.Equal(Text(CampaignReader.Read(whole)), Text(CampaignReader.Read(again)));
    }

    [Fact]
    public void A_run_that_waits_for_a_person_for_ever_is_stopped_and_names_the_step_it_waited_at()
    {
        var job = Plan.Jobs.First(job => job.FaultText == "ignores=identity.plates");
        var waiting = DemoCampaign.Runner().RunOne(job with { Faults = [job.Faults[0] with { Place = "reverse.clear_picture" }] });
        Assert.Null(waiting.Trouble);
        Assert.False(waiting.Releases);
        Assert.Contains(waiting.Deviations, deviation => deviation.Step == "reverse.clear_picture");
    }

    private static string Text(CampaignResult result) =>
        $"{result.Job.Number} {result.Verdict} {result.TookMicroseconds} {string.Join(",", result.Deviations)} {string.Join(",", result.Values)} {result.Trouble}";

    private static string Text(CampaignFindings findings) => string.Join("\n",
    [
        .. findings.Faults.Select(fault => $"{fault.Text} {fault.Runs} {fault.Caught} {fault.FirstStep} {fault.Soonest} {fault.Latest} {fault.Escapes.Length}"),
        .. findings.Steps.Select(step => step.ToString()),
        .. findings.Catches.Select(pair => pair.ToString()).Order(StringComparer.Ordinal),
        findings.Times!.ToString(),
    ]);
}
