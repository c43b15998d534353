using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Writing;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Tests.Kit;

/// <summary>The demo plant, loaded once, and rehearsals of its start-up.</summary>
internal static class DemoPlant
{
    public static readonly string Folder = Repository.PathOf("sequences", "demo");

    public static LoadResult Startup { get; } = SequenceLoader.Load(Path.Combine(Folder, "startup", "startup.yaml"), ExpressionCache.None);

    public static StationFile Station { get; } = StationLoader.Load(Path.Combine(Folder, "stations", "startup.yaml")).Station!;

    /// <summary>Those of vehicles.</summary>
    public static IReadOnlyList<Order> Orders { get; } = [.. All().Where(order => order.VehicleType == "orrin")];

    /// <summary>That of the reference van.</summary>
    public static Order Reference { get; } = All().Single(order => order.VehicleType == "reference_van");

    private static IEnumerable<Order> All() =>
        Directory.GetFiles(Path.Combine(Folder, "orders"), "*.yaml").Order(StringComparer.Ordinal).Select(file => OrderLoader.Load(file, ExpressionCache.None).Order!);

    public static RunFold Rehearse(Order order, ulong seed, params string[] faults) => Rehearse(order, seed, null, null, faults);

    public static RunFold Rehearse(Order order, ulong seed, IRunJournal? journal, IBusObserver? observer, params string[] faults)
    {
        var fold = new FoldingJournal(journal);
        var end = VirtualRun.Run(new VirtualRunRequest
        {
            Run = journal is DurableJournal kept ? kept.Run : "rehearsal-1",
            Sequence = Startup.Sequence!,
            Plant = Startup.Plant!,
            Station = Station,
            Order = order,
            Journal = fold,
            Start = new DateTimeOffset(2026, 11, 25, 6, 0, 0, TimeSpan.Zero),
            Seed = seed,
            Faults = [.. faults.Select(fault => FaultText.Parse(fault).Fault!)],
            Observer = observer,
        });
        Assert.Empty(end.End.Faults);
        return fold.Run;
    }

    private sealed class FoldingJournal(IRunJournal? inner) : IRunJournal
    {
        public RunFold Run { get; } = new();

        public void Append(RunEvent next)
        {
            inner?.Append(next);
            Run.Add(next);
        }
    }
}
