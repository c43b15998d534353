using System.Globalization;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Fitness;
using EolSequencer.Station.Running;

namespace EolSequencer.Rehearsal.Tests.Simulated;

/// <summary>No vehicle is judged by a station that was not checked in this shift, unless the plant says so; a check is about no vehicle.</summary>
public sealed class ShiftCheckTests : IDisposable
{
    private static readonly LoadResult Check = SequenceLoader.Load(Path.Combine(DemoPlant.Folder, "startup", "startup-check.yaml"), ExpressionCache.None);
    private static readonly Order Reference = DemoPlant.Reference;
    private static readonly DateTimeOffset Morning = At("2026-11-25T06:30:00Z"); // 07:30 at the plant, in the early shift

    private readonly string _path = Path.Combine(Path.GetTempPath(), "eol-check-" + Guid.NewGuid().ToString("N"));

    public void Dispose()
    {
        if (Directory.Exists(_path)) Directory.Delete(_path, recursive: true);
    }

    [Fact]
    public void Without_the_check_of_the_shift_no_production_run_begins_and_the_refusal_says_what_to_do()
    {
        var end = Produce(Morning);
        Assert.Null(end.Result);
        Assert.Equal(
            $"the check of the shift 'early', since 2026-11-25 06:00, has not been run; run: eol run --station {DemoPlant.Station.Place.File} --vin {Reference.Vin}",
            Assert.Single(end.Faults));

        RunCheck(Morning);
        Assert.NotNull(Produce(Morning.AddMinutes(5)).Result);
    }

    [Theory]
    [InlineData("2026-11-25T04:59:00Z", "2026-11-25T05:00:00Z", false)] // before the shift
    [InlineData("2026-11-25T05:00:00Z", "2026-11-25T12:59:00Z", true)]
    [InlineData("2026-11-25T05:00:00Z", "2026-11-25T13:00:00Z", false)] // the next shift
    [InlineData("2026-11-25T21:00:00Z", "2026-11-26T04:59:00Z", true)] // over midnight
    [InlineData("2026-10-24T20:00:00Z", "2026-10-25T04:59:00Z", true)] // the long night
    public void It_holds_for_the_shift_it_was_run_in(string check, string run, bool runs)
    {
        RunCheck(At(check));
        Assert.Equal(runs, Produce(At(run)).Result is not null);
    }

    [Fact]
    public void A_daily_check_holds_until_the_next_day_starts()
    {
        var station = DemoPlant.Station with { ShiftCheck = DemoPlant.Station.ShiftCheck! with { IsDaily = true } };
        RunCheck(At("2026-11-25T05:00:00Z"));
        Assert.NotNull(Produce(At("2026-11-26T04:30:00Z"), station).Result);
        Assert.Contains("the check of the day, since 2026-11-26 06:00,", Assert.Single(Produce(At("2026-11-26T05:00:00Z"), station).Faults), StringComparison.Ordinal);
    }

    [Fact]
    public void The_newest_check_decides()
    {
        RunCheck(Morning);
        RunCheck(Morning.AddMinutes(10), "meter_offset=0.6");
        Assert.Contains("was not passed: run startup_1-000002 ended with fail", Assert.Single(Produce(Morning.AddMinutes(20)).Faults), StringComparison.Ordinal);
        RunCheck(Morning.AddMinutes(30));
        Assert.NotNull(Produce(Morning.AddMinutes(40)).Result);
    }

    [Fact]
    public void Rehearsed_checks_checks_in_part_and_of_other_things_do_not_count()
    {
        Run(Morning, RunMode.Rehearsal, Check.Sequence!, Reference);
        Run(Morning, RunMode.Check, Check.Sequence!, Reference, only: ["voltage"]);
        Run(Morning, RunMode.Check, DemoPlant.Startup.Sequence!, DemoPlant.Orders[0], only: ["rest"]);
        Assert.Null(Produce(Morning.AddMinutes(5)).Result);
    }

    [Fact]
    public void A_plant_may_flag_instead_and_then_the_run_shows_it()
    {
        var journal = new List<RunEvent>();
        var end = Run(Morning, RunMode.Production, DemoPlant.Startup.Sequence!, DemoPlant.Orders[0], plant: DemoPlant.Startup.Plant! with { OverdueCheck = OverdueRule.Flag }, only: ["rest"], seen: journal.Add);
        Assert.NotNull(end.Result);
        Assert.Contains("has not been run", Assert.Single(((RunBegun)journal[0]).Unfit), StringComparison.Ordinal);
        Assert.Equal(((RunBegun)journal[0]).Unfit, ((RunBegun)Folder().Record.Runs.Load("startup_1-000001")!.Events[0]).Unfit);
    }

    [Fact]
    public void A_rehearsal_asks_for_no_check() =>
        Assert.NotNull(Run(Morning, RunMode.Rehearsal, DemoPlant.Startup.Sequence!, DemoPlant.Orders[0], only: ["rest"]).Result);

    [Fact]
    public void A_failed_check_is_about_no_vehicle()
    {
        RunCheck(Morning, "meter_offset=0.6");
        var record = Folder().Record;
        Assert.Empty(record.Nonconformities.List(all: true));
        Assert.Empty(record.Vehicles.Of(Reference.Vin.Text).Kinds);
        Assert.Empty(record.Runs.List(new()));
        Assert.Single(record.Runs.List(new() { Mode = RunMode.Check }));
        Assert.True(record.Verify().IsWhole);
    }

    [Fact]
    public void What_a_run_counts_for_is_said_by_station_and_sequence()
    {
        Assert.Equal(RunMode.Check, ShiftCheck.ModeOf(DemoPlant.Station, Check.Sequence!));
        Assert.Equal(RunMode.Production, ShiftCheck.ModeOf(DemoPlant.Station, DemoPlant.Startup.Sequence!));
        Assert.Equal(RunMode.Rehearsal, SimulatedStation.ModeOf(DemoPlant.Station, Check.Sequence!));
    }

    private void RunCheck(DateTimeOffset at, params string[] faults) =>
        Assert.NotNull(Run(at, RunMode.Check, Check.Sequence!, Reference, faults: faults).Result);

    private VehicleRunEnd Produce(DateTimeOffset at, StationFile? station = null) =>
        Run(at, RunMode.Production, DemoPlant.Startup.Sequence!, DemoPlant.Orders[0], station: station, only: ["rest"]);

    private DataFolder Folder(TimeProvider? time = null) => ((FolderResult<DataFolder>.Opened)DataFolder.Open(_path, time ?? TimeProvider.System)).Folder;

    private VehicleRunEnd Run(
        DateTimeOffset at, RunMode mode, CheckedSequence sequence, Order order, Plant? plant = null, StationFile? station = null, string[]? only = null, string[]? faults = null, Action<RunEvent>? seen = null)
    {
        var time = new VirtualTime(at);
        var folder = Folder(time);
        using var hold = ((EolSequencer.Records.Stations.StationResult.Taken)folder.TakeStation(DemoPlant.Station.Id)).Station;
        using var simulated = new SimulatedStation(order, time, 1, (faults ?? []).Select(fault => FaultText.Parse(fault).Fault!));
        var journal = hold.BeginRun();
        return time.Run(() => VehicleRun.RunAsync(
            new VehicleRunRequest
            {
                Run = journal.Run,
                Sequence = sequence,
                Plant = plant ?? DemoPlant.Startup.Plant!,
                Station = station ?? DemoPlant.Station,
                Order = order,
                Adapters = simulated.Adapters,
                Operator = simulated.Operator,
                Journal = new ShowingJournal(journal, seen ?? (_ => { })),
                Time = time,
                Mode = mode,
                Runs = folder.Record.Runs,
                Only = [.. only ?? []],
            },
            default));
    }

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
