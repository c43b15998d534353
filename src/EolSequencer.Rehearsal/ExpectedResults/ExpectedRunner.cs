using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Ports;
using EolSequencer.Records;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Writing;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Running;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>
/// Rehearses tests and compares. As many go on at a time as there are cores; the record keeps them in the order in which they
/// are written, and the same test gives the same events, byte for byte, whenever it is run.
/// </summary>
/// <param name="folder">Where the record goes.</param>
public sealed class ExpectedRunner(DataFolder folder)
{
    /// <summary>Wall time at the start of every test, so that no run depends on the day of its making.</summary>
    public static DateTimeOffset Start { get; } = new(2026, 1, 5, 6, 0, 0, TimeSpan.Zero);

    /// <summary>What came of each test, in the order given.</summary>
    /// <param name="stop">Ends the runs that go on and begins no other; may come from any thread.</param>
    public ImmutableArray<ExpectedOutcome> Run(IReadOnlyList<ExpectedRun> tests, CancellationToken stop = default)
    {
        var outcomes = new ExpectedOutcome[tests.Count];
        foreach (var station in Enumerable.Range(0, tests.Count).GroupBy(number => tests[number].Station.Id))
        {
            var numbers = new Queue<int>(station);
            var trouble = RunAt(station.Key, numbers, tests, outcomes, stop);
            foreach (var number in station) outcomes[number] ??= ExpectedOutcome.NotRun(tests[number], trouble ?? "stopped before its turn");
        }

        return [.. outcomes];
    }

    /// <summary>Runs the tests of one station; what is wrong with station or record, or null.</summary>
    private string? RunAt(string station, Queue<int> numbers, IReadOnlyList<ExpectedRun> tests, ExpectedOutcome[] outcomes, CancellationToken stop)
    {
        var taken = folder.TakeStation(station);
        if (taken is not StationResult.Taken { Station: var hold }) return ((StationResult.Refused)taken).Why;
        using (hold)
        {
            try
            {
                using var batch = hold.BeginBatch();
                var turn = new Lock();
                var line = Enumerable.Range(0, Math.Min(Environment.ProcessorCount, numbers.Count)).Select(_ => new Thread(RunSome)).ToList();
                line.ForEach(thread => thread.Start());
                line.ForEach(thread => thread.Join());
                batch.Complete();
                return null;

                void RunSome()
                {
                    while (Take() is var (number, journal))
                    {
                        using (journal) outcomes[number] = RunOne(tests[number], journal, stop);
                    }
                }

                (int Number, BatchJournal Journal)? Take()
                {
                    lock (turn) return !stop.IsCancellationRequested && numbers.TryDequeue(out var number) ? (number, batch.BeginRun()) : null;
                }
            }
            catch (JournalFault fault)
            {
                return fault.Message;
            }
        }
    }

    private static ExpectedOutcome RunOne(ExpectedRun test, BatchJournal journal, CancellationToken stop)
    {
        var run = new RunFold();
        try
        {
            var end = VirtualRun.Run(Request(test, journal.Run, new ShowingJournal(journal, run.Add)), stop);
            if (end.End.Result is not { } result) return ExpectedOutcome.NotRun(test, string.Join("; ", end.End.Faults));
            journal.Complete();
            var misses = Unseen(test).Concat(new Comparison(test, run).Misses());
            return new ExpectedOutcome(test, journal.Run, run.Ended?.RollUp.Verdict, run.At, [.. misses], result.Fault);
        }
        catch (Exception fault)
        {
            // On this thread nobody else could report it; a run that cannot go on is a fault of the test's surroundings.
            return ExpectedOutcome.NotRun(test, $"the rehearsal broke off: {fault.Message}");
        }
    }

    private static VirtualRunRequest Request(ExpectedRun test, string run, IRunJournal journal) => new()
    {
        Run = run,
        Sequence = test.Sequence,
        Plant = test.Plant,
        Station = test.Station,
        Order = test.Order,
        Journal = journal,
        Start = Start,
        Seed = test.Seed,
        Faults = [.. test.Faults.Select(fault => FaultText.Parse(fault.Value).Fault!)],
        Only = test.Only,
        Operator = test.Script is { } script ? (inner, time) => new ScriptedOperator(script, inner, time) : null,
    };

    private static IEnumerable<Miss> Unseen(ExpectedRun test)
    {
        foreach (var written in test.Faults)
        {
            var fault = FaultText.Parse(written.Value).Fault!;
            if (FaultFit.WhyUnseen(fault, test.Sequence, test.Order) is { } why) yield return new Miss(written.Place, $"fault {fault}", "one that can show", why);
        }
    }
}
