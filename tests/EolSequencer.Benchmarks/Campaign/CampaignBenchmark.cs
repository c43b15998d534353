using System.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Benchmarks.Campaign;

/// <summary>
/// A fault campaign of the demo plant's start-up: as many faults as make about 300,000 judged steps, on the combinations that
/// show every two option values together, and a part of it on one core and on all for the speed-up.
/// </summary>
internal static class CampaignBenchmark
{
    private const int Runs = 1600;
    private const int RunsForSpeedUp = 400;
    private const int WarmUp = 400;

    public static int Run(string[] args)
    {
        var share = args.Contains("small") ? 20 : 1;
        var plant = Path.Combine(Repository.Root, "sequences", "demo");
        var path = Path.Combine(plant, "startup", "startup.yaml");
        var load = SequenceLoader.Load(path, ExpressionCache.None);
        var station = StationLoader.Load(Path.Combine(plant, "stations", "startup.yaml")).Station!;
        var vehicles = CampaignVehicle.All(load.Sequence!.VehicleType, SequenceLoader.Plan(path, ExpressionCache.None).Plan!);
        var plan = CampaignPlan.Of(load.Sequence, vehicles, new CampaignSettings(1, 1, EveryVehicle: true, Pairs: false));
        var faulty = plan.Jobs.Where(job => job.Faults.Length == 1).ToList();
        var jobs = Enumerable.Range(0, Runs / share).Select(number => faulty[(int)((long)number * faulty.Count / (Runs / share))]).ToList();
        var runner = new CampaignRunner(load.Sequence, load.Plant!, station);
        Time(runner, jobs.Take(WarmUp / share), Environment.ProcessorCount, out _);

        var seconds = Time(runner, jobs, Environment.ProcessorCount, out var judged);
        Figures.Print("seconds", seconds, "s");
        Figures.Print("runs", jobs.Count);
        Figures.Print("faults", jobs.Select(job => job.FaultText).Distinct().Count());
        Figures.Print("judged steps", judged);
        var part = jobs.Take(RunsForSpeedUp / share).ToList();
        var (one, all) = (Time(runner, part, 1, out _), Time(runner, part, Environment.ProcessorCount, out _));
        Figures.Print("speed-up of all cores over one", one / all, "", "0.00");
        Figures.PrintMachine();
        return 0;
    }

    private static double Time(CampaignRunner runner, IEnumerable<CampaignJob> jobs, int cores, out long judged)
    {
        var begun = Stopwatch.GetTimestamp();
        judged = runner.Run(jobs, cores, CancellationToken.None).Sum(result => (long)result.Judged);
        return Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }
}
