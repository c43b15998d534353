namespace EolSequencer.Simulators.Physics;

/// <summary>The petrol engine from the first turn of the starter to a steady idle.</summary>
internal sealed class Engine
{
    private static readonly TimeSpan StarterEngages = TimeSpan.FromMilliseconds(150);
    private static readonly TimeSpan RunUp = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan SettlesAfter = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan HuntingHalf = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan JitterStep = TimeSpan.FromMilliseconds(40);
    private TimeSpan _crankStart = TimeSpan.MaxValue;
    private TimeSpan _crankEnd = TimeSpan.MaxValue;
    private double _coolantAtStart;

    public Engine(Van van)
    {
        var spread = van.Spread.Of("engine");
        CrankSeconds = spread.About(0.75, 0.06);
        IdleSpeed = spread.About(780, 8);
        OilPressure = spread.About(2.4, 0.15);
        ShortTrim = spread.About(1.5, 1.5);
        Lambda = spread.About(1.000, 0.003);
        Coolant = van.Surroundings.Temperature + spread.About(3, 1);
        IntakeAir = van.Surroundings.Temperature + spread.About(4, 1);
        Manifold = spread.About(34, 1.5);
        Throttle = spread.About(14, 0.8);
        GearboxOil = van.Surroundings.Temperature + spread.About(4, 1);
    }

    /// <summary>How long the starter turns, in s.</summary>
    public double CrankSeconds { get; set; }

    /// <summary>The highest speed of the start, in 1/min.</summary>
    public double FlareSpeed { get; set; } = 1150;

    /// <summary>1/min.</summary>
    public double IdleSpeed { get; set; }

    /// <summary>How far the idle swings to either side, in 1/min.</summary>
    public double Hunting { get; set; }

    /// <summary>bar at idle.</summary>
    public double OilPressure { get; set; }

    /// <summary>From running to the oil lamp going out, in s.</summary>
    public double OilLampSeconds { get; set; } = 0.8;

    /// <summary>%.</summary>
    public double ShortTrim { get; set; }

    public double Lambda { get; set; }

    /// <summary>°C before the start.</summary>
    public double Coolant { get; set; }

    /// <summary>°C.</summary>
    public double IntakeAir { get; set; }

    /// <summary>kPa at idle.</summary>
    public double Manifold { get; set; }

    /// <summary>%.</summary>
    public double Throttle { get; set; }

    /// <summary>°C.</summary>
    public double GearboxOil { get; set; }

    public int Misfires { get; set; }

    public bool StarterIsDead { get; set; }

    /// <summary>The starter turns it, but it does not fire.</summary>
    public bool DoesNotFire { get; set; }

    /// <summary>Whether it has been asked to run.</summary>
    public bool IsStarted { get; private set; }

    public void Start(TimeSpan now)
    {
        if (IsStarted || StarterIsDead) return;
        IsStarted = true;
        _crankStart = now + StarterEngages;
        _crankEnd = _crankStart + TimeSpan.FromSeconds(DoesNotFire ? 5 : CrankSeconds);
        _coolantAtStart = Coolant;
    }

    public void Stop()
    {
        IsStarted = false;
        _crankStart = _crankEnd = TimeSpan.MaxValue;
    }

    public bool Cranks(TimeSpan now) => now >= _crankStart && now < _crankEnd;

    public bool Runs(TimeSpan now) => now >= _crankEnd && !DoesNotFire;

    /// <summary>How long it has been running; null: it does not.</summary>
    public TimeSpan? RunningFor(TimeSpan now) => Runs(now) ? now - _crankEnd : null;

    /// <summary>When the starter began to turn; the far future when it has not.</summary>
    public TimeSpan CrankStart => _crankStart;

    public bool IsChanging(TimeSpan now) => IsStarted && now < _crankEnd;

    /// <summary>Speed in 1/min.</summary>
    public double Speed(TimeSpan now)
    {
        if (Cranks(now)) return 220 + (12 * Jitter.At(now, JitterStep, 1));
        if (RunningFor(now) is not { } running) return 0;
        if (running < RunUp) return 220 + ((FlareSpeed - 220) * (running / RunUp));
        var settled = IdleSpeed + ((FlareSpeed - IdleSpeed) * Left(running - RunUp));
        var swing = (running.Ticks / HuntingHalf.Ticks) % 2 == 0 ? Hunting : -Hunting;
        return settled + swing + (4 * Jitter.At(now, JitterStep, 2));
    }

    /// <summary>Coolant in °C: a cold engine gains about two degrees a minute at idle.</summary>
    public double CoolantAt(TimeSpan now) => RunningFor(now) is { } running ? Math.Min(_coolantAtStart + (running.TotalSeconds / 30), 90) : Coolant;

    /// <summary>Oil pressure in bar.</summary>
    public double OilPressureAt(TimeSpan now) => Runs(now) ? OilPressure + (0.03 * Jitter.At(now, JitterStep, 3)) : 0;

    /// <summary>Short-term mixture correction in %.</summary>
    public double ShortTrimAt(TimeSpan now) => Runs(now) ? ShortTrim + (1.2 * Jitter.At(now, JitterStep * 5, 4)) : 0;

    /// <summary>Air ratio; lean air when it does not run.</summary>
    public double LambdaAt(TimeSpan now) => Runs(now) ? Lambda + (0.008 * Jitter.At(now, JitterStep * 5, 5)) : 2;

    /// <summary>Pressure in the manifold in kPa.</summary>
    public double ManifoldAt(TimeSpan now) => Runs(now) ? Manifold : 101;

    private static double Left(TimeSpan settling)
    {
        var step = 1 + (settling / SettlesAfter);
        return 1 / (step * step * step);
    }
}
