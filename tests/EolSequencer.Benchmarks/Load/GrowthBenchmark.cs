using System.Globalization;
using System.Runtime;
using System.Runtime.CompilerServices;
using EolSequencer.Benchmarks.Plants;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Benchmarks.Load;

/// <summary>
/// What a step costs in sequences of 100, 1,000 and 10,000 steps: loading from a warm cache, and running in virtual time with
/// the record on, as work of the thread that does it. What every load and run costs
/// however long it is, is that of a sequence with one step of each kind, and taken off.
/// </summary>
internal static class GrowthBenchmark
{
    private const int Rounds = 9;
    private static readonly DateTimeOffset Start = new(2026, 11, 25, 5, 0, 0, TimeSpan.Zero);
    private static readonly string Order = Path.Combine("orders", "FV-100231.yaml");
    private static readonly string Station = Path.Combine("stations", "startup.yaml");

    public static int Run(string[] args)
    {
        var isSmall = args.Contains("small");
        int[] sizes = isSmall ? [ManySteps.Kinds, 100, 200] : [ManySteps.Kinds, 100, 1_000, 10_000];
        var plants = sizes.Select(size => new Sized(size)).ToList();
        try
        {
            // Small ones are repeated, so that every figure is of about as much work; rounds are interleaved, so that whatever
            // else the computer does meets all of them.
            for (var round = 0; round < (isSmall ? 1 : Rounds); round++)
            {
                foreach (var plant in plants) plant.Measure(Math.Clamp(sizes[^1] / plant.Steps, 1, 10));
            }

            Print("load", plants, plant => plant.Loads);
            Print("first run after a load", plants, plant => plant.FirstRuns);
            Print("run", plants, plant => plant.Runs);
        }
        finally
        {
            plants.ForEach(plant => plant.Dispose());
        }

        Figures.PrintMachine();
        return 0;
    }

    private static void Print(string what, List<Sized> plants, Func<Sized, List<double>> times)
    {
        var basis = Median(times(plants[0]));
        Figures.Print($"{what}, a step of each kind", basis, "µs", "0");
        var costs = plants.Skip(1).Select(plant => (plant.Steps, Cost: (Median(times(plant)) - basis) / (plant.Steps - plants[0].Steps))).ToList();
        foreach (var (steps, cost) in costs) Figures.Print(string.Create(CultureInfo.InvariantCulture, $"{what}, {steps} steps, each"), cost, "µs", "0.0");
        Figures.Print($"{what}, dearest step to cheapest", costs.Max(one => one.Cost) / costs.Min(one => one.Cost), "", "0.00");
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    /// <summary>A plant with a sequence of so many steps.</summary>
    private sealed class Sized : IDisposable
    {
        private readonly DemoCopy _plant = new();
        private readonly string _sequence;
        private readonly StationHold _hold;
        private ulong _seed;

        public Sized(int steps)
        {
            Steps = steps;
            _sequence = ManySteps.Write(_plant, steps);
            Load(); // fills the cache
            var data = ((FolderResult<DataFolder>.Opened)DataFolder.Open(_plant.Path("data"), TimeProvider.System)).Folder;
            _hold = ((TakenStation.Taken)data.TakeStation("startup_1")).Station;
        }

        public int Steps { get; }

        public List<double> Loads { get; } = [];

        /// <summary>Runs that use the expressions for the first time, which makes machine code of them.</summary>
        public List<double> FirstRuns { get; } = [];

        public List<double> Runs { get; } = [];

        public void Measure(int times)
        {
            var station = StationLoader.Load(_plant.Path(Station)).Station!;
            var order = OrderLoader.Load(_plant.Path(Order), ExpressionCache.None).Order!;
            var (load, first, further) = (0.0, 0.0, 0.0);
            for (var time = 0; time < times; time++)
            {
                ForgetCode();
                var once = Once(station, order);
                (load, first, further) = (load + once.Load, first + once.First, further + once.Further);
            }

            Loads.Add(load / times);
            FirstRuns.Add(first / times);
            Runs.Add(further / times);
        }

        // A method of its own: what it loaded is in nobody's hands when it has ended.
        [MethodImpl(MethodImplOptions.NoInlining)]
        private (double Load, double First, double Further) Once(Model.Plants.StationFile station, Model.Vehicles.Order order)
        {
            LoadResult? sequence = null;
            var load = Work(() => sequence = Load());
            var compiled = JitInfo.GetCompiledMethodCount(currentThread: true);
            var first = Work(() => Run(sequence!, station, order));
            if (JitInfo.GetCompiledMethodCount(currentThread: true) == compiled) throw new InvalidOperationException("the first run found code of an earlier load");
            var further = Work(() => Run(sequence!, station, order));
            return (load, first, further);
        }

        public void Dispose()
        {
            _hold.Dispose();
            _plant.Dispose();
        }

        private LoadResult Load()
        {
            var loaded = SequenceLoader.Load(_sequence, ExpressionCache.In(_plant.Path("cache")));
            return loaded.IsReady ? loaded : throw new InvalidOperationException(string.Join('\n', loaded.Diagnostics.Take(5)));
        }

        private void Run(LoadResult sequence, Model.Plants.StationFile station, Model.Vehicles.Order order)
        {
            using var batch = _hold.BeginBatch();
            using (var journal = batch.BeginRun())
            {
                var end = VirtualRun.Run(new VirtualRunRequest
                {
                    Run = journal.Run,
                    Sequence = sequence.Sequence!,
                    Plant = sequence.Plant!,
                    Station = station,
                    Order = order,
                    Journal = journal,
                    Start = Start,
                    Seed = ++_seed,
                });
                journal.Complete();
                if (end.End.Result!.RollUp.Verdict != Model.Judging.Verdict.Pass) throw new InvalidOperationException($"the run ended {end.End.Result.RollUp}");
            }

            batch.Complete();
        }

        /// <summary>Code that somebody still uses would serve the next load as well, by chance.</summary>
        private static void ForgetCode()
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        /// <summary>µs of work.</summary>
        private static double Work(Action action)
        {
            var worked = ThreadWork.SoFar;
            action();
            return (ThreadWork.SoFar - worked).TotalMicroseconds;
        }
    }
}
