using System.Collections.Concurrent;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Simulated;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>Runs the jobs of a campaign on all cores; results come in the order in which they end.</summary>
public sealed class CampaignRunner(CheckedSequence sequence, Plant plant, StationFile station)
{
    /// <summary>Wall time of every run: nothing in a campaign depends on the day it is run.</summary>
    public static readonly DateTimeOffset Start = new(2026, 1, 5, 5, 0, 0, TimeSpan.Zero);

    /// <summary>A run that waits for a person who does nothing is stopped then, in virtual time.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    private const int MostWaiting = 256;

    /// <summary>Runs jobs until none is left or somebody stops it; what has ended is given out all the same.</summary>
    /// <param name="cores">How many runs go on at a time, from 1.</param>
    public IEnumerable<CampaignResult> Run(IEnumerable<CampaignJob> jobs, int cores, CancellationToken stop)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(cores, 1);
        using var results = new BlockingCollection<CampaignResult>(MostWaiting);
        using var line = jobs.GetEnumerator();
        var turn = new Lock();
        var left = cores;
        var threads = Enumerable.Range(0, cores).Select(number => new Thread(RunSome) { IsBackground = true, Name = $"rehearsal {number + 1}" }).ToList();
        threads.ForEach(thread => thread.Start());
        foreach (var result in results.GetConsumingEnumerable()) yield return result;
        threads.ForEach(thread => thread.Join());

        void RunSome()
        {
            while (!stop.IsCancellationRequested && Take() is { } job) results.Add(RunOne(job), CancellationToken.None);
            if (Interlocked.Decrement(ref left) == 0) results.CompleteAdding();
        }

        CampaignJob? Take()
        {
            lock (turn) return line.MoveNext() ? line.Current : null;
        }
    }

    /// <summary>Runs one job on the caller's thread.</summary>
    public CampaignResult RunOne(CampaignJob job)
    {
        var journal = new CampaignJournal(job);
        var end = VirtualRun.Run(new VirtualRunRequest
        {
            Run = $"{station.Id}-{job.Number}",
            Sequence = sequence,
            Plant = plant,
            Station = station,
            Order = job.Vehicle.Order,
            Journal = journal,
            Start = Start,
            Seed = job.Seed,
            Faults = job.Faults,
            Longest = Longest,
        });
        return journal.Result(end.End.Faults);
    }
}
