using EolSequencer.Model.Judging;

namespace EolSequencer.Statistics.Conformity;

/// <summary>
/// What one decision about one measured value risks. Assumed: the uncertainty is that of a normal distribution around the
/// measured value, its expanded form U is two standard uncertainties (k = 2), and nothing else is known of the item.
/// </summary>
/// <param name="Conforming">The probability that the true value lies in the window, 0 to 1.</param>
/// <remarks>Source: JCGM 106:2012, 7 (conformance probability) and 9.3 (specific risks).</remarks>
public sealed record SpecificRisk(double Conforming)
{
    /// <summary>Standard uncertainties in an expanded one.</summary>
    public const double CoverageFactor = 2;

    /// <summary>The probability that accepting the item is wrong: the specific consumer's risk.</summary>
    public double OfAccepting => 1 - Conforming;

    /// <summary>The probability that rejecting the item is wrong: the specific producer's risk.</summary>
    public double OfRejecting => Conforming;

    /// <summary>The risk of deciding about a measured value; null when the uncertainty is zero, because then nothing is risked.</summary>
    /// <param name="measured">In the window's unit.</param>
    /// <param name="window">The tolerance.</param>
    /// <param name="expanded">Expanded uncertainty U (k = 2) in the window's unit, not negative.</param>
    public static SpecificRisk? Of(decimal measured, Window window, decimal expanded)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(expanded);
        if (expanded == 0) return null;
        var tolerance = new Interval((double?)window.Low ?? double.NegativeInfinity, (double?)window.High ?? double.PositiveInfinity);
        return new SpecificRisk(Math.Clamp(tolerance.Probability((double)measured, (double)expanded / CoverageFactor), 0, 1));
    }
}
