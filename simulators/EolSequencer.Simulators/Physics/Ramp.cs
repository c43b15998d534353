namespace EolSequencer.Simulators.Physics;

/// <summary>A value that goes from one place to another at an even speed and stays there.</summary>
internal readonly record struct Ramp
{
    private Ramp(double from, double to, TimeSpan start, TimeSpan end) => (From, To, Start, End) = (from, to, start, end);

    public double From { get; }

    public double To { get; }

    public TimeSpan Start { get; }

    /// <summary>When it arrives.</summary>
    public TimeSpan End { get; }

    public static Ramp Resting(double value) => new(value, value, TimeSpan.Zero, TimeSpan.Zero);

    /// <summary>Sets out now.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="perSecond">How fast, above zero.</param>
    /// <param name="now">The moment.</param>
    public Ramp Toward(double to, double perSecond, TimeSpan now)
    {
        var from = At(now);
        return new Ramp(from, to, now, now + TimeSpan.FromSeconds(Math.Abs(to - from) / perSecond));
    }

    /// <summary>Stands still where it is.</summary>
    public Ramp Stopped(TimeSpan now) => Resting(At(now));

    public bool IsMoving(TimeSpan now) => now < End;

    public double At(TimeSpan now) =>
        now >= End ? To : now <= Start ? From : From + ((To - From) * ((now - Start) / (End - Start)));
}
