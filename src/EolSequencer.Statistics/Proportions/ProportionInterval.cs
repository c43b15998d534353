namespace EolSequencer.Statistics.Proportions;

/// <summary>A proportion, or a difference of two, with the ends of its 95 % confidence interval.</summary>
/// <param name="Estimate">As counted.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record ProportionInterval(double Estimate, double Low, double High)
{
    /// <summary>The 97.5 % quantile of the standard normal distribution.</summary>
    internal const double Z = 1.959963984540054;
}
