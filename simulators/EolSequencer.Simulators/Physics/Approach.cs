namespace EolSequencer.Simulators.Physics;

/// <summary>A value that settles toward another: fast at first, then ever slower, as temperatures and currents do.</summary>
/// <remarks>
/// (1 + t / 4τ)^-4 stands in for the exponential: it needs no function whose last digit differs between systems.
/// </remarks>
internal readonly record struct Approach(double From, double To, TimeSpan Start, TimeSpan TimeConstant)
{
    public static Approach Resting(double value) => new(value, value, TimeSpan.Zero, TimeSpan.FromSeconds(1));

    /// <summary>Sets out from the present value.</summary>
    public Approach Toward(double to, TimeSpan timeConstant, TimeSpan now) => new(At(now), to, now, timeConstant);

    public double At(TimeSpan now) => To + ((From - To) * Left(now));

    /// <summary>Whether it is still farther from its end than a resolution.</summary>
    public bool IsMoving(TimeSpan now, double resolution) => Math.Abs(From - To) * Left(now) > resolution / 2;

    private double Left(TimeSpan now)
    {
        if (now <= Start) return 1;
        var step = 1 + ((now - Start) / TimeConstant / 4);
        return 1 / (step * step * step * step);
    }
}
