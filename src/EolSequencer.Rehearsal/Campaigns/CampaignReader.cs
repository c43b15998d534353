using System.Collections.Immutable;
using Dapper;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>Reads out of a campaign's file what it has shown.</summary>
public static class CampaignReader
{
    private const int LeastForMargin = 5;

    /// <summary>The findings so far.</summary>
    public static CampaignFindings Read(CampaignFile file)
    {
        var connection = file.Connection;
        var options = connection.Query<(long Number, string Options)>("SELECT number, options FROM vehicle").ToDictionary(row => row.Number, row => row.Options);
        var results = connection.Query<ResultRow>("SELECT job, vehicle, seed, first, second, verdict, releases, took_us AS took, trouble FROM result ORDER BY job").ToList();
        var deviations = connection.Query<DeviationRow>("SELECT job, step, counted, at_us AS at FROM deviation ORDER BY job, at_us").ToLookup(row => row.Job);
        var alone = results.Where(result => result is { First: not null, Second: null, Trouble: null }).ToLookup(result => result.First!);
        var faults = connection.Query<FaultRow>("SELECT text, point, kind, class, effect, person FROM fault ORDER BY place")
            .Select(row => Fault(row, alone[row.Text].ToList(), deviations, options)).ToImmutableArray();
        var catches = Catches(alone, deviations);
        return new CampaignFindings
        {
            Head = file.Head,
            Done = results.Count,
            Faults = faults,
            Steps = Steps(connection.Query<StepRow>("SELECT id, min(class) AS class, max(judged) AS judged FROM step GROUP BY id ORDER BY min(place), id"), faults, catches),
            Catches = catches,
            FalseAlarms = [.. results.Where(result => result is { First: null, Trouble: null, Releases: 0 }).Select(result => new FalseAlarm(Key(result, options), result.Worst, Deviations(deviations[result.Job])))],
            Masked = Masked(results, faults, options),
            PairRuns = results.Count(result => result.Second is not null),
            Margins = Margins(connection.Query<NumberRow>("SELECT step, vehicle, value, low, high FROM number JOIN result ON result.job = number.job", buffered: false), options),
            Flaky = Flaky([.. results.Where(result => result is { First: null, Trouble: null })], deviations, options),
            Troubles = [.. results.Where(result => result.Trouble is not null).Select(result => result.Trouble!).Distinct()],
            Times = Times([.. results.Where(result => result is { First: null, Trouble: null }).Select(result => result.Took / 1e6).Order()]),
        };
    }

    private static FaultFinding Fault(FaultRow row, List<ResultRow> runs, ILookup<long, DeviationRow> deviations, Dictionary<long, string> options)
    {
        var first = runs.Where(run => run.Releases == 0).Select(run => deviations[run.Job].FirstOrDefault()).OfType<DeviationRow>().ToList();
        var times = first.Select(one => one.At / 1e6).ToList();
        return new FaultFinding(
            row.Text, row.Point, row.Kind, row.Class, row.Effect, row.Person != 0, runs.Count, runs.Count(run => run.Releases == 0),
            first.CountBy(one => one.Step).OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => pair.Key).FirstOrDefault(),
            times.Count == 0 ? null : times.Min(), times.Count == 0 ? null : times.Max(),
            [.. runs.Where(run => run.Releases != 0).Select(run => Key(run, options))]);
    }

    private static ImmutableDictionary<(string, string), Catch> Catches(ILookup<string, ResultRow> alone, ILookup<long, DeviationRow> deviations)
    {
        var catches = ImmutableDictionary.CreateBuilder<(string, string), Catch>();
        foreach (var runs in alone)
        {
            foreach (var run in runs)
            {
                var isFirst = true;
                foreach (var deviation in deviations[run.Job])
                {
                    var before = catches.GetValueOrDefault((runs.Key, deviation.Step)) ?? new Catch(0, Verdict.None, false);
                    catches[(runs.Key, deviation.Step)] = new Catch(before.Runs + 1, Verdicts.Worst(before.Worst, deviation.Verdict), before.IsFirst || isFirst);
                    isFirst = false;
                }
            }
        }

        return catches.ToImmutable();
    }

    private static ImmutableArray<StepFinding> Steps(IEnumerable<StepRow> rows, ImmutableArray<FaultFinding> faults, ImmutableDictionary<(string Fault, string Step), Catch> catches)
    {
        var persons = faults.Where(fault => fault.IsOfPerson).Select(fault => fault.Text).ToHashSet();
        var byStep = catches.Keys.ToLookup(key => key.Step, key => key.Fault);
        return [.. rows.Select(row => new StepFinding(row.Id, row.Class, row.Judged != 0, byStep[row.Id].Count(), byStep[row.Id].Count(fault => !persons.Contains(fault))))];
    }

    private static ImmutableArray<MaskedPair> Masked(List<ResultRow> results, ImmutableArray<FaultFinding> faults, Dictionary<long, string> options)
    {
        var caught = faults.Where(fault => fault.Caught > 0 && fault.Escapes.IsEmpty).Select(fault => fault.Text).ToHashSet();
        return
        [
            .. results.Where(result => result.Second is not null && result.Releases != 0 && caught.Contains(result.First!) && caught.Contains(result.Second))
                .Select(result => new MaskedPair(result.First!, result.Second!, Key(result, options))),
        ];
    }

    private static ImmutableArray<FlakyStep> Flaky(List<ResultRow> good, ILookup<long, DeviationRow> deviations, Dictionary<long, string> options) =>
    [
        .. good.GroupBy(run => run.Vehicle)
            .SelectMany(runs => runs.SelectMany(run => deviations[run.Job]).CountBy(row => row.Step).Select(step => new FlakyStep(step.Key, options[runs.Key], step.Value, runs.Count())))
            .Where(step => step.Worse < step.Runs)
            .OrderByDescending(step => (double)step.Worse / step.Runs).ThenBy(step => step.Step, StringComparer.Ordinal),
    ];

    private static ImmutableArray<Margin> Margins(IEnumerable<NumberRow> rows, Dictionary<long, string> options) =>
    [
        .. rows.GroupBy(row => (row.Step, row.Vehicle), (key, numbers) => (key.Step, Options: options[key.Vehicle], Numbers: numbers.ToList()))
            .Where(group => group.Numbers.Count >= LeastForMargin).Select(group => Margin(group.Step, group.Options, group.Numbers))
            .OrderBy(margin => margin.Distance ?? double.MaxValue).ThenBy(margin => margin.Step, StringComparer.Ordinal),
    ];

    private static Margin Margin(string step, string options, List<NumberRow> numbers)
    {
        var mean = numbers.Average(row => row.Value);
        var deviation = Math.Sqrt(numbers.Sum(row => (row.Value - mean) * (row.Value - mean)) / (numbers.Count - 1));
        var (low, high) = (numbers[0].Low, numbers[0].High);
        var toEnd = Math.Min(low is { } least ? mean - least : double.PositiveInfinity, high is { } most ? most - mean : double.PositiveInfinity);
        return new Margin(
            step, options, numbers.Count, mean, deviation, low, high, deviation > 0 ? toEnd / deviation : null, numbers.Count(row => row.Value < row.Low || row.Value > row.High));
    }

    private static RunTimes? Times(List<double> seconds) =>
        seconds.Count == 0 ? null : new RunTimes(seconds.Count, Rank(seconds, 0.5), Rank(seconds, 0.95), seconds[^1]);

    private static double Rank(List<double> sorted, double share) => sorted[Math.Max(0, (int)Math.Ceiling(share * sorted.Count) - 1)];

    private static ImmutableArray<Deviation> Deviations(IEnumerable<DeviationRow> rows) => [.. rows.Select(row => new Deviation(row.Step, row.Verdict, row.At))];

    private static RunKey Key(ResultRow row, Dictionary<long, string> options) =>
        new((int)row.Job, (int)row.Vehicle, options[row.Vehicle], (ulong)row.Seed, $"{row.First} {row.Second}".Trim());

    private static Verdict VerdictOf(string word) => Verdicts.TryParse(word, out var verdict) ? verdict : throw new FormatException($"'{word}' is no verdict");

    private sealed record ResultRow(long Job, long Vehicle, long Seed, string? First, string? Second, string Verdict, long Releases, long Took, string? Trouble)
    {
        public Verdict Worst => VerdictOf(Verdict);
    }

    private sealed record DeviationRow(long Job, string Step, string Counted, long At)
    {
        public Verdict Verdict => VerdictOf(Counted);
    }

    private sealed record FaultRow(string Text, string Point, string Kind, string Class, string Effect, long Person);

    private sealed record StepRow(string Id, string Class, long Judged);

    private sealed record NumberRow(string Step, long Vehicle, double Value, double? Low, double? High);
}
