using System.Collections.Immutable;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Source;
using EolSequencer.Records;
using EolSequencer.Rehearsal.ExpectedResults;
using EolSequencer.Rehearsal.Tests.Kit;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Rehearsal.Tests.ExpectedResults;

/// <summary>A test that was not run is told as such; it neither passes nor fails.</summary>
public sealed class ExpectedRunnerTests : IDisposable
{
    private static readonly Stated<Verdict> Pass = new(Verdict.Pass, SourcePlace.None);

    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("eol-expected-");
    private readonly DataFolder _folder;

    public ExpectedRunnerTests() => _folder = ((FolderResult<DataFolder>.Opened)DataFolder.Open(_data.FullName, TimeProvider.System)).Folder;

    public void Dispose() => _data.Delete(recursive: true);

    [Fact]
    public void Outcomes_and_records_come_in_the_order_of_the_tests_however_many_go_on_at_once()
    {
        var tests = Enumerable.Range(1, 9).Select(number => Test(number, "rest")).ToList();

        var outcomes = new ExpectedRunner(_folder).Run(tests, TestContext.Current.CancellationToken);

        Assert.Equal(tests, outcomes.Select(outcome => outcome.Test));
        Assert.All(outcomes, outcome => Assert.True(outcome.HasPassed));
        Assert.Equal(Enumerable.Range(1, 9).Select(number => $"startup_1-{number:000000}"), outcomes.Select(outcome => outcome.Run));
        Assert.True(_folder.Record.Verify().IsWhole);
    }

    [Fact]
    public void After_a_stop_nothing_is_begun()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        var outcome = Assert.Single(new ExpectedRunner(_folder).Run([Test(1)], stop.Token));

        Assert.Equal((false, "stopped before its turn", null), (outcome.HasPassed, outcome.Trouble, outcome.Run));
    }

    [Fact]
    public void A_station_that_another_process_holds_is_trouble_of_its_tests()
    {
        using var hold = ((TakenStation.Taken)_folder.TakeStation("startup_1")).Station;

        var outcome = Assert.Single(new ExpectedRunner(_folder).Run([Test(1)], TestContext.Current.CancellationToken));

        Assert.Contains("startup_1", outcome.Trouble, StringComparison.Ordinal);
        Assert.False(outcome.HasPassed);
    }

    [Fact]
    public void A_run_that_can_never_go_on_is_trouble()
    {
        var never = new OperatorScript("never", ImmutableSortedDictionary<string, ImmutableArray<ScriptedAnswer>>.Empty.Add("ignition.key_on!", [new ScriptedAnswer(null, TimeSpan.Zero)]));

        var outcome = Assert.Single(new ExpectedRunner(_folder).Run([Test(1, "ignition") with { Script = never }], TestContext.Current.CancellationToken));

        Assert.StartsWith("the rehearsal broke off: virtual time stands still", outcome.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_loop_the_vehicle_must_have_something()
    {
        var electric = DemoPlant.Orders.First(order => order.Options["powertrain"].ToString() == "electric");
        var step = new ExpectedStep("ignition.lit.shown", SourcePlace.None, ["ignition.lit[engine].shown", "ignition.lit[oil].shown"], null) { State = new(StepState.Pass, SourcePlace.None) };

        var outcome = Assert.Single(new ExpectedRunner(_folder).Run([Test(1) with { Order = electric, Steps = [step] }], TestContext.Current.CancellationToken));

        Assert.Equal("ignition.lit.shown: expected one at least that applies to this vehicle, found none", Assert.Single(outcome.Misses).ToString().TrimStart(':', ' '));
    }

    private static ExpectedRun Test(int number, params string[] only) => new()
    {
        Name = $"t{number}",
        Place = SourcePlace.None,
        Sequence = DemoPlant.Startup.Sequence!,
        Plant = DemoPlant.Startup.Plant!,
        Station = DemoPlant.Station,
        Order = DemoPlant.Orders[0],
        Seed = (ulong)number,
        Only = [.. only],
        Verdict = Pass,
        Others = new(OtherSteps.Pass, SourcePlace.None),
    };
}
