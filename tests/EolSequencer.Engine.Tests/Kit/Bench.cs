using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>A small station in virtual time: a bus, a meter, an operator, and one run of a sequence.</summary>
internal sealed class Bench
{
    public static readonly Order DemoOrder = new(
        "FV-1",
        Vin.TryParse("TESTVXN06AA000017", CheckDigitRule.Require).Vin!,
        "orrin",
        ImmutableSortedDictionary<string, Value>.Empty.Add("drive", new TextValue("fwd")),
        ImmutableSortedDictionary<string, Value>.Empty.Add("software[gateway]", new TextValue("G1")).Add("software[brakes]", new TextValue("B1")));

    public Bench()
    {
        Time = new VirtualTime(new DateTimeOffset(2026, 11, 25, 6, 0, 0, TimeSpan.Zero));
        Bus = new FakeDevice("bus", Time);
        Meter = new FakeDevice("meter", Time);
        Operator = new FakeOperator(Time);
        Clock = Time;
    }

    public VirtualTime Time { get; }

    /// <summary>What the engine reads the time from: virtual time, unless a test puts something in between.</summary>
    public TimeProvider Clock { get; set; }

    public FakeDevice Bus { get; }
    public FakeDevice Meter { get; }
    public FakeOperator Operator { get; }
    public ListJournal Journal { get; set; } = new();
    public IPartSerials Serials { get; set; } = IPartSerials.None;
    public RunResult? Result { get; private set; }

    public IEnumerable<Judged> Judged => Journal.Events.OfType<Judged>();

    /// <summary>Runs steps and gives the counted verdict of the whole.</summary>
    public Verdict Run(params Node[] steps) => Run(Sequence(steps));

    public Verdict Run(CheckedSequence sequence, CancellationToken stop = default, ImmutableArray<string> only = default)
    {
        Result = Time.Run(() => SequenceRunner.RunAsync(Request(sequence, [], only), stop));
        return Result.RollUp.Verdict;
    }

    /// <summary>Goes on with a run that broke off behind its first events; they stand in the journal as well.</summary>
    public Verdict GoOn(CheckedSequence sequence, IEnumerable<RunEvent> past)
    {
        Journal = new ListJournal(past);
        Result = Time.Run(() => SequenceRunner.RunAsync(Request(sequence, [.. Journal.Events]), default));
        return Result.RollUp.Verdict;
    }

    /// <summary>Leaves the vehicle of such a run safe.</summary>
    public void LeaveSafe(CheckedSequence sequence, IEnumerable<RunEvent> past)
    {
        Journal = new ListJournal(past);
        Assert.Null(Time.Run(() => SequenceRunner.LeaveSafeAsync(Request(sequence, [.. Journal.Events]))));
    }

    private RunRequest Request(CheckedSequence sequence, ImmutableArray<RunEvent> past, ImmutableArray<string> only = default) => new()
    {
        Sequence = sequence,
        Plan = Planner.For(sequence, DemoOrder, only),
        Order = DemoOrder,
        Devices = new Dictionary<string, IDevice> { ["bus"] = Bus, ["meter"] = Meter },
        Operator = Operator,
        Journal = Journal,
        Time = Clock,
        Past = past,
        Serials = Serials,
        Begin = (n, at) => new RunBegun
        {
            N = n, At = at, Run = "bench-1", Plant = "fennholt", Station = "bench", StationKind = "startup", Sequence = sequence.Id,
            Revision = 1, Order = DemoOrder, Sources = [], Compiled = "", Program = "test", Mode = RunMode.Rehearsal, Zone = "UTC",
            Wall = Time.GetUtcNow(), Planned = 0,
        },
    };

    public static CheckedSequence Sequence(params Node[] steps) => new()
    {
        Id = "startup",
        Title = LocalText.Plain("Start-up"),
        Revision = 1,
        VehicleType = null!,
        StationKind = "startup",
        Roles = [new DeviceRole("bus", Channels.BusKind), new DeviceRole("meter", Channels.MeterKind)],
        Steps = [.. steps],
        Sources = [],
        CompiledHash = "",
    };
}
