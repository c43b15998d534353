using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Records;
using EolSequencer.Records.Writing;
using EolSequencer.Rehearsal.Simulated;
using StationHold = EolSequencer.Records.Stations.StationHold;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Benchmarks.WhatIf;

/// <summary>
/// Four weeks of invented vehicles in a real record, as rehearsals: some hundred are simulated, the others are made of them
/// (<see cref="VariedRun"/>) before they are written, chained and sealed like any run.
/// </summary>
internal static class History
{
    private const int MostSimulated = 240;

    public static readonly DateTimeOffset Start = new(2026, 10, 26, 5, 0, 0, TimeSpan.Zero);

    private static readonly TimeSpan Length = TimeSpan.FromDays(26);

    /// <summary>Writes the history into a folder.</summary>
    public static void Write(DataFolder folder, string plant, int vehicles)
    {
        var sequence = SequenceLoader.Load(Path.Combine(plant, "startup", "startup.yaml"), ExpressionCache.None);
        var station = StationLoader.Load(Path.Combine(plant, "stations", "startup.yaml")).Station!;
        var simulated = Simulate(sequence, station, plant, Math.Min(vehicles, MostSimulated));
        var varied = new VariedRun(sequence.Sequence!, new Scatter(vehicles));
        using var hold = ((TakenStation.Taken)folder.TakeStation(station.Id)).Station;
        WriteAll(hold, vehicles, (journal, vehicle) =>
        {
            var wall = Start + (Length * ((double)vehicle / vehicles));
            foreach (var next in varied.Of(simulated[vehicle % simulated.Length], journal.Run, vehicle, wall)) journal.Append(next);
        });
    }

    private static IReadOnlyList<RunEvent>[] Simulate(LoadResult sequence, StationFile station, string plant, int count)
    {
        var orders = Directory.GetFiles(Path.Combine(plant, "orders"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(file => OrderLoader.Load(file, ExpressionCache.None).Order!).ToList();
        var runs = new IReadOnlyList<RunEvent>[count];
        Parallel.For(0, count, number =>
        {
            var journal = new Kept();
            VirtualRun.Run(new VirtualRunRequest
            {
                Run = "simulated-1",
                Sequence = sequence.Sequence!,
                Plant = sequence.Plant!,
                Station = station,
                Order = orders[number % orders.Count],
                Journal = journal,
                Start = Start,
                Seed = (ulong)number,
            });
            runs[number] = journal.Events;
        });
        return runs;
    }

    private static void WriteAll(StationHold hold, int vehicles, Action<BatchJournal, int> write)
    {
        using var batch = hold.BeginBatch();
        var turn = new Lock();
        var next = 0;
        var line = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(WriteSome)).ToList();
        line.ForEach(thread => thread.Start());
        line.ForEach(thread => thread.Join());
        batch.Complete();

        void WriteSome()
        {
            while (Take() is var (vehicle, journal))
            {
                using (journal)
                {
                    write(journal, vehicle);
                    journal.Complete();
                }
            }
        }

        (int Vehicle, BatchJournal Journal)? Take()
        {
            lock (turn) return next < vehicles ? (next++, batch.BeginRun()) : null;
        }
    }

    private sealed class Kept : IRunJournal
    {
        public List<RunEvent> Events { get; } = new(512);

        public void Append(RunEvent next) => Events.Add(next);
    }
}
