namespace EolSequencer.Simulators.Physics;

/// <summary>The gear selector and the picture that follows reverse.</summary>
internal sealed class Selector
{
    public const int Park = 0;
    public const int Reverse = 1;
    public const int Neutral = 2;
    public const int Drive = 3;
    private readonly Van _van;
    private TimeSpan _reverseSince;

    public Selector(Van van)
    {
        _van = van;
        PictureSeconds = van.Spread.Of("camera").About(1.2, 0.08);
    }

    /// <summary>In the order of their bits.</summary>
    public static IReadOnlyList<string> Names { get; } = ["park", "reverse", "neutral", "drive"];

    public int Position { get; private set; }

    /// <summary>Positions that are selected but not reported.</summary>
    public bool[] Dead { get; } = new bool[4];

    /// <summary>What the transmission reports for park.</summary>
    public int GearInPark { get; set; }

    /// <summary>From reverse to the rear picture, in s.</summary>
    public double PictureSeconds { get; set; }

    /// <summary>What is wrong with the picture; empty: nothing.</summary>
    public string PictureFault { get; set; } = "";

    public bool Reports(int position) => Position == position && !Dead[position];

    public int Gear => Position switch { Park => GearInPark, Reverse => 14, Neutral => 0, _ => 1 };

    /// <summary>Moves the lever; out of park only with the brake held and the ignition on.</summary>
    public void Select(int position)
    {
        if (Position == Park && position != Park && !(_van.Brakes.IsPressed && _van.Ignition.IsOn)) return;
        if (position == Reverse && Position != Reverse) _reverseSince = _van.Now;
        Position = position;
        _van.Lamps.Refresh();
        _van.Changed();
    }

    public bool ShowsPicture(TimeSpan now) => Position == Reverse && now >= _reverseSince + TimeSpan.FromSeconds(PictureSeconds);

    public bool AwaitsPicture(TimeSpan now) => Position == Reverse && !ShowsPicture(now);
}
