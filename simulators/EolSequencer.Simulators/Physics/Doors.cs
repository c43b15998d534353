namespace EolSequencer.Simulators.Physics;

/// <summary>Doors with their contacts and locks, and the hood.</summary>
internal sealed class Doors(Van van)
{
    private readonly bool[] _isOpen = new bool[5];
    private readonly bool[] _isLocked = new bool[4];
    private bool _isHoodOpen;

    /// <summary>In the order of their bits; the first four have locks.</summary>
    public static IReadOnlyList<string> Names { get; } = ["front_left", "front_right", "rear", "side", "rear_second"];

    /// <summary>How many of them have a lock.</summary>
    public const int Locks = 4;

    /// <summary>Contacts that never report an open door.</summary>
    public bool[] DeadContacts { get; } = new bool[5];

    /// <summary>Doors that do not close, or whose contact reports them open for ever.</summary>
    public bool[] StayOpen { get; } = new bool[5];

    public bool IsHoodContactDead { get; set; }

    public bool HoodStaysOpen { get; set; }

    /// <summary>Lock motors that do not move.</summary>
    public bool[] DeadLocks { get; } = new bool[Locks];

    /// <summary>Locks that do not open again.</summary>
    public bool[] StuckLocks { get; } = new bool[Locks];

    public bool IsAjar(int door) => (_isOpen[door] || StayOpen[door]) && !DeadContacts[door];

    public bool IsHoodOpen => (_isHoodOpen || HoodStaysOpen) && !IsHoodContactDead;

    public bool IsLocked(int door) => _isLocked[door];

    public void Move(int door, bool open)
    {
        _isOpen[door] = open;
        van.Changed();
    }

    public void MoveHood(bool open)
    {
        _isHoodOpen = open;
        van.Changed();
    }

    public void CloseAll()
    {
        Array.Clear(_isOpen);
        _isHoodOpen = false;
        van.Changed();
    }

    /// <summary>A button of the key is pressed.</summary>
    public void Lock(bool isLocked)
    {
        for (var door = 0; door < Locks; door++)
        {
            if (!DeadLocks[door] && (isLocked || !StuckLocks[door])) _isLocked[door] = isLocked;
        }

        van.Changed();
    }
}
