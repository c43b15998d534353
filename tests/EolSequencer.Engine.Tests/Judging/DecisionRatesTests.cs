using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Engine.Tests.Judging;

/// <summary>
/// How often steps decide wrongly about readings with known scatter must be what the theory of measurement says, or a
/// rehearsal's false alarms would say nothing about the line.
/// </summary>
/// <remarks>
/// Source: JCGM 106:2012, 9.5, global risks. True values normal, 95 % of them in the window; its half width four expanded
/// uncertainties (k = 2). Computed from the two integrals there: simple decision 0.8583 % false acceptance and 1.5537 % false
/// rejection; with a guard band of one expanded uncertainty 0.02077 % and 10.357 %.
/// </remarks>
public sealed class DecisionRatesTests
{
    private const double ProcessDeviation = 0.1;
    private const double HalfWidth = 1.959964 * ProcessDeviation;
    private const double Expanded = HalfWidth / 4;
    private const double Nominal = 2.0;
    private const int StepsOfARun = 1000;
    private const int Runs = 60;

    [Theory]
    [InlineData(Decision.Simple, 0.008583, 0.015537)]
    [InlineData(Decision.Guarded, 0.0002077, 0.10357)]
    public void False_acceptance_and_false_rejection_are_those_of_the_theory(Decision decision, double acceptance, double rejection)
    {
        var random = new RandomStream(106, "decision rates");
        var (accepted, rejected) = (0, 0);
        var sequence = Bench.Sequence([.. Enumerable.Range(0, StepsOfARun).Select(number => Step(number, decision))]);
        for (var run = 0; run < Runs; run++)
        {
            var bench = new Bench();
            var isGood = new List<bool>();
            bench.Meter.With("current", _ =>
            {
                var real = Nominal + (ProcessDeviation * random.Normal());
                isGood.Add(Math.Abs(real - Nominal) <= HalfWidth);
                return Channels.Ampere((decimal)(real + (Expanded / 2 * random.Normal())));
            });
            bench.Run(sequence);
            foreach (var (judged, good) in bench.Judged.Zip(isGood))
            {
                if (judged.Measured == Verdict.Pass && !good) accepted++;
                if (judged.Measured != Verdict.Pass && good) rejected++;
            }
        }

        Assert.InRange(accepted, Least(acceptance), Most(acceptance));
        Assert.InRange(rejected, Least(rejection), Most(rejection));
    }

    // The binomial interval by its normal approximation, 99.9 % two-sided.
    private static int Least(double share) => (int)Math.Floor(Mean(share) - Spread(share));

    private static int Most(double share) => (int)Math.Ceiling(Mean(share) + Spread(share));

    private static double Mean(double share) => StepsOfARun * Runs * share;

    private static double Spread(double share) => 3.2905 * Math.Sqrt(Mean(share) * (1 - share));

    private static Step Step(int number, Decision decision) =>
        Steps.Read($"current_{number}", Channels.Current, Steps.Window((decimal)(Nominal - HalfWidth), (decimal)(Nominal + HalfWidth), "A")) with
        {
            Decision = decision,
            Uncertainty = new Operand.Constant(Channels.Ampere((decimal)Expanded)),
        };
}
