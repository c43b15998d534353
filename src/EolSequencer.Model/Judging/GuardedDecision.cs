namespace EolSequencer.Model.Judging;

/// <summary>
/// A decision that leaves room for the uncertainty of the measurement: pass only where the true value is inside, fail
/// only where it is outside, inconclusive between.
/// </summary>
/// <remarks>Source: the decision rules of ISO 14253-1, with the expanded uncertainty U (k = 2) as guard band on both sides.</remarks>
public static class GuardedDecision
{
    /// <summary>Whether some value can pass at all: the guard bands must not meet inside the window.</summary>
    /// <param name="window">The window.</param>
    /// <param name="uncertainty">Expanded uncertainty in the window's unit, not negative.</param>
    public static bool CanPass(Window window, decimal uncertainty) =>
        window.Low is not { } low || window.High is not { } high || 2 * uncertainty <= high - low;

    /// <summary>Pass in [L+U, H−U], fail below L−U or above H+U, otherwise inconclusive; an open end asks for nothing.</summary>
    /// <param name="number">The value in the window's unit.</param>
    /// <param name="window">The window.</param>
    /// <param name="uncertainty">Expanded uncertainty in the window's unit, not negative; 0 is the simple decision.</param>
    public static Verdict Judge(decimal number, Window window, decimal uncertainty)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(uncertainty);
        if (number < window.Low - uncertainty || number > window.High + uncertainty) return Verdict.Fail;
        if (number < window.Low + uncertainty || number > window.High - uncertainty) return Verdict.Inconclusive;
        return Verdict.Pass;
    }
}
