using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>What the demo plant promises: every fault of class safety is caught, and every judged step can fail.</summary>
public sealed class DemoFindingsTests : IDisposable
{
    private readonly OwnFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>Each fault on the first and the last vehicle of its plan; the whole plan is a matter of <c>eol rehearse</c>.</summary>
    [Fact]
    public void Every_safety_fault_is_caught_every_judged_step_can_fail_and_no_good_vehicle_fails()
    {
        var plan = DemoCampaign.Plan();
        var jobs = plan.Jobs.GroupBy(job => job.FaultText).SelectMany(runs => runs.Key.Length == 0 ? runs : runs.Take(1).Concat(runs.TakeLast(1)).Distinct());
        using var file = DemoCampaign.Keep(_folder.PathOf("demo.campaign"), plan, DemoCampaign.Runner().Run(jobs, Environment.ProcessorCount, CancellationToken.None));
        var findings = CampaignReader.Read(file);

        Assert.Empty(findings.Troubles);
        Assert.Empty(findings.FalseAlarms);
        Assert.Empty(findings.SafetyEscapes.Select(fault => fault.Text));
        Assert.Empty(findings.NeverFailing.Select(step => step.Id));
        Assert.Empty(findings.SafetyUnreached.Select(step => step.Id));
        Assert.True(findings.IsGood);
        Assert.True(findings.Times!.P95 <= findings.Head.CycleMicroseconds / 1e6);
    }

    [Fact]
    public void A_fault_is_told_by_the_step_that_was_the_first_to_see_it()
    {
        var plan = DemoCampaign.Plan();
        using var file = DemoCampaign.Keep(_folder.PathOf("one.campaign"), plan, [Run(plan, "battery_voltage"), Run(plan, "busy=gateway")]);
        var findings = CampaignReader.Read(file);

        var battery = findings.Faults.Single(fault => fault.Text == "battery_voltage");
        Assert.Equal((1, 1, "rest.voltage"), (battery.Runs, battery.Caught, battery.FirstStep));
        Assert.InRange(battery.Soonest!.Value, 0, 60);
        Assert.Equal((Verdict.Fail, true), findings.Catches[("battery_voltage", "rest.voltage")] is var found ? (found.Worst, found.IsFirst) : default);

        var busy = findings.Faults.Single(fault => fault.Text == "busy=gateway");
        Assert.Equal((0, null), (busy.Caught, busy.FirstStep));
        Assert.Equal(1ul, busy.Escapes.Single().Seed);
        Assert.True(findings.IsGood); // class other
    }

    [Fact]
    public void A_safety_fault_that_escapes_and_a_good_vehicle_that_fails_each_make_the_campaign_fail()
    {
        var plan = DemoCampaign.Plan();
        var safe = Run(plan, "horn_open");
        using (var escaped = DemoCampaign.Keep(_folder.PathOf("escaped.campaign"), plan, [safe with { Releases = true, Verdict = Verdict.Pass, Deviations = [] }]))
        {
            Assert.Equal("horn_open", CampaignReader.Read(escaped).SafetyEscapes.Single().Text);
            Assert.False(CampaignReader.Read(escaped).IsGood);
        }

        var good = DemoCampaign.Runner().RunOne(plan.Jobs[0]);
        using var alarmed = DemoCampaign.Keep(_folder.PathOf("alarm.campaign"), plan,
            [good with { Releases = false, Verdict = Verdict.Fail, Deviations = [new Deviation("rest.voltage", Verdict.Fail, 5_000_000)] }]);
        var findings = CampaignReader.Read(alarmed);
        Assert.Equal("rest.voltage", findings.FalseAlarms.Single().Steps.Single().Step);
        Assert.False(findings.IsGood);
    }

    [Fact]
    public void Two_faults_that_hide_each_other_are_named_only_when_each_alone_is_caught()
    {
        var plan = DemoCampaign.Plan(pairs: true);
        var pair = plan.Jobs.First(job => job.Faults.Length == 2);
        CampaignResult Alone(string fault, bool isCaught) => new(
            plan.Jobs.First(job => job.FaultText == fault), isCaught ? Verdict.Fail : Verdict.Pass, !isCaught, 1, 1, isCaught ? [new Deviation("rest.voltage", Verdict.Fail, 1)] : [], [], null);
        var hidden = new CampaignResult(pair, Verdict.Pass, true, 1, 1, [], [], null);
        var (first, second) = (pair.Faults[0].ToString(), pair.Faults[1].ToString());

        using (var file = DemoCampaign.Keep(_folder.PathOf("masked.campaign"), plan, [Alone(first, true), Alone(second, true), hidden]))
        {
            var masked = CampaignReader.Read(file).Masked.Single();
            Assert.Equal((first, second), (masked.First, masked.Second));
        }

        using var unseen = DemoCampaign.Keep(_folder.PathOf("unseen.campaign"), plan, [Alone(first, true), Alone(second, false), hidden]);
        Assert.Empty(CampaignReader.Read(unseen).Masked);
    }

    [Fact]
    public void Margins_are_counted_in_standard_deviations_and_shaky_steps_by_how_often()
    {
        var plan = DemoCampaign.Plan(seeds: 5);
        var good = plan.Jobs.Where(job => job.Faults.IsEmpty && job.Vehicle.Number == 0).ToList();
        double[] values = [9, 10, 11, 10, 10];
        using var file = DemoCampaign.Keep(_folder.PathOf("margin.campaign"), plan, good.Select((job, at) => new CampaignResult(
            job, at == 2 ? Verdict.Fail : Verdict.Pass, at != 2, 1, 1_000_000 * (at + 1), at == 2 ? [new Deviation("rest.voltage", Verdict.Fail, 1)] : [],
            [new JudgedNumber("rest.voltage", values[at], 8, 10.5)], null)));
        var findings = CampaignReader.Read(file);

        var margin = findings.Margins.Single();
        Assert.Equal((5, 10.0, 1), (margin.Runs, margin.Mean, margin.Outside));
        Assert.Equal(Math.Sqrt(0.5), margin.Deviation, 12);
        Assert.Equal(0.5 / Math.Sqrt(0.5), margin.Distance!.Value, 12);
        Assert.Equal(new FlakyStep("rest.voltage", DemoCampaign.Vehicles[0].Text, 1, 5), findings.Flaky.Single());
        Assert.Equal(new RunTimes(5, 3, 5, 5), findings.Times);
    }

    private static CampaignResult Run(CampaignPlan plan, string fault) => DemoCampaign.Runner().RunOne(plan.Jobs.First(job => job.FaultText == fault));
}
