namespace EolSequencer.Simulators.Physics;

/// <summary>What the driver's hands turn and press. A dead switch reports nothing; a stuck one stays on.</summary>
internal sealed class Switches(Van van)
{
    /// <summary>No side, as the stalk's middle.</summary>
    public const int Middle = -1;

    private bool _isLow;
    private bool _isHigh;
    private bool _isHazard;
    private int _turn = Middle;
    private int _wiper = Middle;

    public bool IsPark { get; private set; }

    public bool IsLow => Reports("low", _isLow);

    public bool IsHigh => Reports("high", _isHigh);

    public bool IsHazard => Reports("hazard", _isHazard);

    /// <summary>0 left, 1 right.</summary>
    public int Turn => Reports("turn_left", _turn == 0) ? 0 : Reports("turn_right", _turn == 1) ? 1 : Middle;

    /// <summary>0 slow, 1 fast.</summary>
    public int Wiper => Reports("wiper_fast", _wiper == 1) ? 1 : Reports("wiper_slow", _wiper == 0) ? 0 : Middle;

    public bool IsWasher => Reports("washer", IsWasherPulled);

    public bool IsHorn => Reports("horn", IsHornPressed);

    public bool IsWasherPulled { get; private set; }

    public bool IsHornPressed { get; private set; }

    /// <summary>Switches that report nothing any more.</summary>
    public HashSet<string> Dead { get; } = [];

    /// <summary>Switches that stay on once they were on.</summary>
    public HashSet<string> Stuck { get; } = [];

    public static IReadOnlyList<string> Names { get; } =
        ["low", "high", "hazard", "turn_left", "turn_right", "wiper_slow", "wiper_fast", "washer", "horn"];

    public void Light(bool park, bool low, bool high) => Change(() => (IsPark, _isLow, _isHigh) = (park, Held("low", _isLow, low), Held("high", _isHigh, high)));

    public void Hazard(bool isIn) => Change(() => _isHazard = Held("hazard", _isHazard, isIn));

    public void Stalk(int side) => Change(() => _turn = _turn >= 0 && Stuck.Contains(_turn == 0 ? "turn_left" : "turn_right") ? _turn : side);

    public void Wipe(int stage) => Change(() => _wiper = _wiper >= 0 && Stuck.Contains(_wiper == 0 ? "wiper_slow" : "wiper_fast") ? _wiper : stage);

    public void PullWasher(bool isPulled) => Change(() => IsWasherPulled = Held("washer", IsWasherPulled, isPulled));

    public void PressHorn(bool isPressed) => Change(() => IsHornPressed = Held("horn", IsHornPressed, isPressed));

    private bool Held(string name, bool was, bool wanted) => wanted || (was && Stuck.Contains(name));

    private bool Reports(string name, bool isOn) => isOn && !Dead.Contains(name);

    private void Change(Action change)
    {
        change();
        van.Lamps.Refresh();
        van.Flasher.Refresh();
        van.Wipers.Refresh();
        van.Changed();
    }
}
