namespace EolSequencer.Simulators.Physics;

/// <summary>The four mirror drives; 50 % is the middle.</summary>
internal sealed class Mirrors
{
    private readonly Van _van;
    private readonly Ramp[] _position;

    public Mirrors(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("mirrors");
        _position = new Ramp[Names.Count];
        PerSecond = new double[Names.Count];
        for (var axis = 0; axis < Names.Count; axis++)
        {
            _position[axis] = Ramp.Resting(spread.About(50, 1));
            PerSecond[axis] = spread.About(22, 1);
        }
    }

    /// <summary>In the order of their bytes.</summary>
    public static IReadOnlyList<string> Names { get; } = ["left_across", "left_height", "right_across", "right_height"];

    /// <summary>Percent per second; 0: stuck.</summary>
    public double[] PerSecond { get; }

    /// <summary>Where each one lands beside its target, in %.</summary>
    public double[] Offset { get; } = new double[4];

    /// <summary>Wires of left and right are swapped.</summary>
    public bool AreSwapped { get; set; }

    public double Position(int axis, TimeSpan now) => _position[axis].At(now);

    public bool IsMoving(TimeSpan now)
    {
        foreach (ref readonly var way in _position.AsSpan())
        {
            if (way.IsMoving(now)) return true;
        }

        return false;
    }

    public void Drive(int axis, double target)
    {
        if (AreSwapped) axis ^= 2;
        if (PerSecond[axis] == 0) return;
        _position[axis] = _position[axis].Toward(Math.Clamp(target + Offset[axis], 0, 100), PerSecond[axis], _van.Now);
        _van.Changed();
    }

    /// <summary>A drive stops where it is when the request that moved it ends.</summary>
    public void Stop(int axis)
    {
        if (AreSwapped) axis ^= 2;
        _position[axis] = _position[axis].Stopped(_van.Now);
        _van.Changed();
    }
}
