using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Replay;
using EolSequencer.Rehearsal.Replay.WhatIf;
using EolSequencer.Rehearsal.Tests.Kit;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Rehearsal.Tests.Replay;

/// <summary>What a revision says of many vehicles is counted again here from the step results that the record keeps for reading.</summary>
public sealed class WhatIfTests : IDisposable
{
    private const int Vehicles = 24;

    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("eol-whatif-");
    private readonly DataFolder _folder;

    public WhatIfTests()
    {
        _folder = ((FolderResult<DataFolder>.Opened)DataFolder.Open(_data.FullName, TimeProvider.System)).Folder;
        using var hold = ((TakenStation.Taken)_folder.TakeStation("startup_1")).Station;
        using var batch = hold.BeginBatch();
        for (var number = 0; number < Vehicles; number++)
        {
            using var journal = batch.BeginRun();
            foreach (var next in SmallPlant.Rehearse(0, (ulong)number + 1, number % 6 == 5 ? ["hood_contact_open"] : [])) journal.Append(As(next, journal.Run, number));
            journal.Complete();
        }

        batch.Complete();
    }

    public void Dispose() => _data.Delete(recursive: true);

    [Fact]
    public void Counts_by_step_are_those_of_the_values_in_the_record()
    {
        var result = Run(SmallPlant.With("reduce: min, expect: at least 12 V", "reduce: min, expect: at least 12.6 V"));

        var values = Steps("supply.settled").Select(step => decimal.Parse(step.ValueText!, CultureInfo.InvariantCulture)).ToList();
        var counts = result.ByStep["supply.settled"];
        var (good, bad) = (values.Count(value => value >= 12.6m), values.Count(value => value < 12.6m));
        Assert.InRange(bad, 1, Vehicles - 1);
        Assert.Equal((Vehicles, 0, good, bad, bad), (counts.Was(Verdict.Pass), counts.Was(Verdict.Fail), counts.Is(Verdict.Pass), counts.Is(Verdict.Fail), counts.Changed));
        Assert.Equal((long)Vehicles, result.Runs);
        Assert.Equal(Ids().Where(run => Value(run) < 12.6m), result.Changed.Select(run => run.Run));
    }

    [Fact]
    public void First_time_through_moves_by_the_vehicles_that_change()
    {
        var result = Run(SmallPlant.With("expect: equals (order.coding)", "expect: matches /0+/"));

        var first = result.FirstTimeThrough;
        Assert.Equal((Vehicles, 0, Vehicles - (Vehicles / 6), 0), (first.Vehicles, first.Was, first.Gained, first.Lost));
        Assert.Equal((double)(Vehicles - (Vehicles / 6)) / Vehicles, first.LeastChange!.Estimate);
    }

    [Fact]
    public void Vehicles_that_the_record_does_not_decide_make_a_range()
    {
        var result = Run(SmallPlant.With("expect: equals (order.coding) }", "expect: matches /0+/ }\n      - { step: more, read: bus.ambient, expect: 0 .. 40 °C }"));

        Assert.Equal((long)Vehicles, result.ByStep["body.more"].Undecidable);
        var first = result.FirstTimeThrough;
        Assert.Equal(Vehicles - (Vehicles / 6), first.Undecidable); // Where the hood failed, the new step decides nothing.
        Assert.Equal((0, Vehicles - (Vehicles / 6)), (first.IsAtLeast, first.IsAtMost));
    }

    [Fact]
    public void Only_the_first_whole_run_of_a_vehicle_counts_and_others_are_left_out()
    {
        Add(run => As(SmallPlant.Rehearse(0, 77), run, 0));
        Add(run => As(SmallPlant.Rehearse(0, 78), run, 900).Select(next => next is RunBegun begun ? begun with { OnlySteps = ["supply"] } : next));

        var result = Run(SmallPlant.First);

        Assert.Equal((Vehicles + 1, Vehicles), (result.Runs, result.FirstTimeThrough.Vehicles));
        Assert.Equal(1, result.LeftOut["done only in part"]);
        Assert.Empty(result.Changed);
    }

    private WhatIfResult Run(Revision now)
    {
        var runs = _folder.Record.CheckRuns();
        Assert.Empty(runs.Findings);
        return new WhatIfRunner(runs, SmallPlant.Recorded, now).Run(Ids());
    }

    private System.Collections.Immutable.ImmutableArray<string> Ids() =>
        _folder.Record.CheckRuns().Select(new RunFilter { Mode = RunMode.Rehearsal });

    private IEnumerable<StepSummary> Steps(string id) => Ids().SelectMany(run => _folder.Record.Runs.Steps(run)).Where(step => step.Step == id);

    private decimal Value(string run) =>
        decimal.Parse(_folder.Record.Runs.Steps(run).Single(step => step.Step == "supply.settled").ValueText!, CultureInfo.InvariantCulture);

    private void Add(Func<string, IEnumerable<RunEvent>> make)
    {
        using var hold = ((TakenStation.Taken)_folder.TakeStation("startup_1")).Station;
        using var batch = hold.BeginBatch();
        using (var journal = batch.BeginRun())
        {
            foreach (var next in make(journal.Run)) journal.Append(next);
            journal.Complete();
        }

        batch.Complete();
    }

    private static IEnumerable<RunEvent> As(IEnumerable<RunEvent> events, string run, int vehicle) => events.Select(next => As(next, run, vehicle));

    /// <summary>The same run as another vehicle's.</summary>
    private static RunEvent As(RunEvent next, string run, int vehicle)
    {
        if (next is not RunBegun begun) return next;
        var text = $"GFVRRNFP0VF{vehicle + 200_000}";
        text = text[..8] + Vin.ComputeCheckDigit(text) + text[9..];
        return begun with { Run = run, Order = begun.Order with { Vin = Vin.TryParse(text, CheckDigitRule.Require).Vin! } };
    }
}
