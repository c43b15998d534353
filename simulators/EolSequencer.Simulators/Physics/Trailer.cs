namespace EolSequencer.Simulators.Physics;

/// <summary>The trailer socket with the load box that the tester plugs in.</summary>
internal sealed class Trailer
{
    private static readonly TimeSpan Inrush = TimeSpan.FromMilliseconds(30);
    private readonly Van _van;
    private TimeSpan _onSince = TimeSpan.MaxValue;
    private bool _isPlugged;

    public Trailer(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("trailer");
        double[] amps = [1.75, 1.75, 0.84, 0.84, 1.7, 1.75, 1.75];
        for (var i = 0; i < Amps.Length; i++) Amps[i] = spread.About(amps[i], 0.03);
    }

    /// <summary>In the order of their bytes.</summary>
    public static IReadOnlyList<string> Circuits { get; } = ["turn_left", "turn_right", "tail_left", "tail_right", "stop", "fog", "reverse"];

    /// <summary>Current of each circuit into the load box in A; 0: open.</summary>
    public double[] Amps { get; } = new double[7];

    /// <summary>The plug is not recognised.</summary>
    public bool IsDetectionDead { get; set; }

    /// <summary>The plug is reported for ever once it was in.</summary>
    public bool IsDetectionStuck { get; set; }

    public bool IsPresent => _isPlugged && !IsDetectionDead;

    public void Plug(bool isPlugged)
    {
        _isPlugged = isPlugged || (_isPlugged && IsDetectionStuck);
        _van.Changed();
    }

    public void Take(bool? on)
    {
        _onSince = on == true ? _van.Now : TimeSpan.MaxValue;
        _van.Changed();
    }

    public double Current(int circuit, TimeSpan now)
    {
        if (!_isPlugged || now < _onSince) return 0;
        var step = 1 + ((now - _onSince) / Inrush);
        return Amps[circuit] * (1 + (5 / (step * step * step)));
    }
}
