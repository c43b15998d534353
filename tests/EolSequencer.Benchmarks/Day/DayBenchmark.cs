using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records;
using EolSequencer.Records.Writing;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;
using EolSequencer.Rehearsal.Simulated;

namespace EolSequencer.Benchmarks.Day;

/// <summary>
/// A day of a plant: 1,300 vehicles through the start-up sequence of the demo plant, in virtual time, with real frames
/// and the record on. One process, a thread for each core that runs vehicles, one that writes.
/// </summary>
internal static class DayBenchmark
{
    private const int Full = 1300;
    private const int Small = 26;
    private static readonly DateTimeOffset Start = new(2026, 11, 25, 5, 0, 0, TimeSpan.Zero);

    public static int Run(string[] args)
    {
        var vehicles = args.Contains("small") ? Small : args is [var count] && int.TryParse(count, out var wanted) ? wanted : Full;
        var plant = Path.Combine(Repository.Root, "sequences", "demo");
        var sequence = SequenceLoader.Load(Path.Combine(plant, "startup", "startup.yaml"), ExpressionCache.None);
        var station = StationLoader.Load(Path.Combine(plant, "stations", "startup.yaml"));
        var orders = Directory.GetFiles(Path.Combine(plant, "orders"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(file => OrderLoader.Load(file, ExpressionCache.None).Order!).ToList();
        var folder = Directory.CreateTempSubdirectory("eol-day");
        try
        {
            var opened = (FolderResult<DataFolder>.Opened)DataFolder.Open(folder.FullName, TimeProvider.System);
            using var hold = ((TakenStation.Taken)opened.Folder.TakeStation(station.Station!.Id)).Station;
            var day = new DayRun(sequence, station.Station!, orders, hold);
            day.Run(Math.Min(vehicles, 1000)); // Warm-up: code compiled for good, open files.
            GC.Collect();
            var used = Environment.CpuUsage.TotalTime;
            var begun = Stopwatch.GetTimestamp();
            var sum = day.Run(vehicles);
            var seconds = Stopwatch.GetElapsedTime(begun).TotalSeconds;
            used = Environment.CpuUsage.TotalTime - used;
            Print(seconds, used.TotalSeconds, vehicles, sum, folder);
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return 0;
    }

    private static void Print(double seconds, double processor, int vehicles, DaySum sum, DirectoryInfo folder)
    {
        Figures.Print("seconds", seconds, "s");
        Figures.Print("processor time", processor, "s");
        Figures.Print("vehicles", vehicles);
        Figures.Print("judged steps", sum.Judged);
        Figures.Print("judged steps with a verdict", sum.Decided);
        Figures.Print("events", sum.Events);
        Figures.Print("frames encoded and decoded", sum.Frames);
        Figures.Print("record bytes", folder.GetFiles("*", SearchOption.AllDirectories).Sum(file => file.Length), "B");
        Figures.Print("peak memory", Process.GetCurrentProcess().PeakWorkingSet64 / 1024.0 / 1024.0, "MiB", "0");
        Console.WriteLine($"checksum: {sum.Text}");
        Figures.PrintMachine();
        var (reference, why) = PythonReference.Measure();
        if (reference is null)
        {
            Console.WriteLine($"reference: left out, {why}");
            return;
        }

        Figures.Print("reference, pytest and python-can, one vehicle", reference.Value, "s");
        Figures.Print("reference, the same number of vehicles", reference.Value * vehicles, "s", "0");
        Figures.Print("ratio", reference.Value * vehicles / seconds, "", "0.0");
    }

    private sealed class DaySum
    {
        public long Judged { get; set; }
        public long Decided { get; set; }
        public long Events { get; set; }
        public long Frames { get; set; }
        public string Text { get; set; } = "";

        public static DaySum Of(IReadOnlyCollection<DaySum> sums) => new()
        {
            Judged = sums.Sum(sum => sum.Judged),
            Decided = sums.Sum(sum => sum.Decided),
            Events = sums.Sum(sum => sum.Events),
            Frames = sums.Sum(sum => sum.Frames),
            Text = Convert.ToHexString(SHA256.HashData(Encoding.ASCII.GetBytes(string.Concat(sums.Select(sum => sum.Text)))))[..16],
        };
    }

    private sealed class DayRun(LoadResult sequence, Model.Plants.StationFile station, IReadOnlyList<Model.Vehicles.Order> orders, StationHold hold)
    {
        /// <summary>As many vehicles at a time as there are cores; the record keeps them in the order of their numbers.</summary>
        public DaySum Run(int vehicles)
        {
            var sums = new DaySum[vehicles];
            using var batch = hold.BeginBatch();
            var turn = new Lock();
            var next = 0;
            var line = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(RunSome)).ToList();
            line.ForEach(thread => thread.Start());
            line.ForEach(thread => thread.Join());
            batch.Complete();
            return DaySum.Of(sums);

            void RunSome()
            {
                while (Take() is var (number, journal))
                {
                    using (journal) sums[number] = RunOne(number, journal);
                }
            }

            (int Number, BatchJournal Journal)? Take()
            {
                lock (turn) return next < vehicles ? (next++, batch.BeginRun()) : null;
            }
        }

        private DaySum RunOne(int number, BatchJournal journal)
        {
            var sum = new DaySum();
            var end = VirtualRun.Run(new VirtualRunRequest
            {
                Run = journal.Run,
                Sequence = sequence.Sequence!,
                Plant = sequence.Plant!,
                Station = station,
                Order = orders[number % orders.Count],
                Journal = new CountingJournal(journal, sum),
                Start = Start,
                Seed = (ulong)number,
            });
            journal.Complete();
            sum.Frames = end.Frames;
            sum.Text = $"{number}:{end.End.Result!.RollUp}:{end.Frames}:{end.Took.Ticks};";
            return sum;
        }
    }

    private sealed class CountingJournal(IRunJournal journal, DaySum sum) : IRunJournal
    {
        public void Append(RunEvent next)
        {
            journal.Append(next);
            sum.Events++;
            if (next is not Judged judged) return;
            sum.Judged++;
            if (judged.Measured != Verdict.None) sum.Decided++;
        }
    }
}
