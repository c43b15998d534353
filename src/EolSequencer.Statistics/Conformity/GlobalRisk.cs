namespace EolSequencer.Statistics.Conformity;

/// <summary>
/// What a decision rule risks over a whole process, before any item has been measured. Wants to know how the true values of
/// the process are distributed, which no single run can tell.
/// </summary>
/// <param name="FalseAcceptance">The probability of an item that does not conform and is accepted: the global consumer's risk.</param>
/// <param name="FalseRejection">The probability of an item that conforms and is rejected: the global producer's risk.</param>
/// <param name="Conforming">The probability that an item conforms.</param>
/// <param name="Accepted">The probability that an item is accepted.</param>
/// <remarks>
/// Source: JCGM 106:2012, 9.5. Both risks are joint probabilities; divided by <paramref name="Accepted"/> the first becomes the
/// share of bad items among those accepted.
/// </remarks>
public sealed record GlobalRisk(double FalseAcceptance, double FalseRejection, double Conforming, double Accepted)
{
    private const double Far = 9;
    private const int Panels = 256;

    /// <summary>The risks with normally distributed true values.</summary>
    /// <param name="mean">Mean of the process.</param>
    /// <param name="deviation">Standard deviation of the true values, above zero.</param>
    /// <param name="tolerance">Where an item conforms.</param>
    /// <param name="acceptance">Where a measured value is accepted.</param>
    /// <param name="uncertainty">Standard uncertainty of the measurement, above zero.</param>
    public static GlobalRisk Of(double mean, double deviation, Interval tolerance, Interval acceptance, double uncertainty) => Of(
        value => NormalDistribution.Density((value - mean) / deviation) / deviation,
        new Interval(mean - (Far * deviation), mean + (Far * deviation)), tolerance, acceptance, uncertainty);

    /// <summary>The risks with true values of any distribution.</summary>
    /// <param name="density">Density of the true values.</param>
    /// <param name="support">Where the density is worth counting; both ends finite.</param>
    public static GlobalRisk Of(Func<double, double> density, Interval support, Interval tolerance, Interval acceptance, double uncertainty)
    {
        var (conforming, accepted, both) = (0.0, 0.0, 0.0);
        foreach (var (from, to) in Pieces(support, tolerance, acceptance, uncertainty))
        {
            var isInside = (from + to) / 2 is var middle && middle >= tolerance.Low && middle <= tolerance.High;
            var all = Integral(density, from, to);
            var taken = Integral(value => density(value) * acceptance.Probability(value, uncertainty), from, to);
            accepted += taken;
            if (!isInside) continue;
            conforming += all;
            both += taken;
        }

        return new GlobalRisk(accepted - both, conforming - both, conforming, accepted);
    }

    // Cut where something bends, so that each piece is smooth.
    private static IEnumerable<(double From, double To)> Pieces(Interval support, Interval tolerance, Interval acceptance, double uncertainty)
    {
        double[] bends =
        [
            tolerance.Low, tolerance.High,
            acceptance.Low - (Far * uncertainty), acceptance.Low, acceptance.Low + (Far * uncertainty),
            acceptance.High - (Far * uncertainty), acceptance.High, acceptance.High + (Far * uncertainty),
        ];
        double[] cuts = [support.Low, .. bends.Where(bend => bend > support.Low && bend < support.High).Distinct().Order(), support.High];
        return cuts.Zip(cuts.Skip(1));
    }

    /// <summary>Simpson's rule.</summary>
    private static double Integral(Func<double, double> f, double from, double to)
    {
        var step = (to - from) / (2 * Panels);
        var sum = f(from) + f(to);
        for (var at = 1; at < 2 * Panels; at++) sum += (at % 2 == 0 ? 2 : 4) * f(from + (at * step));
        return sum * step / 3;
    }
}
