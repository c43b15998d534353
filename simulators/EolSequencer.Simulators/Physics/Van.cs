using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Physics;

/// <summary>
/// The vehicle as a thing: what it is made of and in which state each part is. Every value is a function of state and
/// moment, so nothing has to tick; whoever changes a state says so.
/// </summary>
internal sealed class Van
{
    private readonly ISchedule _schedule;

    public Van(ISchedule schedule, Equipment equipment, ulong seed)
    {
        _schedule = schedule;
        Equipment = equipment;
        Spread = new Spread(seed);
        Surroundings = new Surroundings(this);
        Switches = new Switches(this);
        Ignition = new Ignition(this);
        Lamps = new Lamps(this);
        Flasher = new Flasher(this);
        Wipers = new Wipers(this);
        Doors = new Doors(this);
        Windows = new Windows(this);
        Mirrors = new Mirrors(this);
        Horn = new Horn(this);
        Climate = new Climate(this);
        Engine = new Engine(this);
        ElectricDrive = new ElectricDrive(this);
        Selector = new Selector(this);
        Brakes = new Brakes(this);
        Wheels = new Wheels(this);
        Restraint = new Restraint(this);
        Cluster = new Cluster(this);
        Seat = new Seat(this);
        Trailer = new Trailer(this);
        Leveller = new Leveller(this);
        PowerNet = new PowerNet(this);
        Body = new Body(this);
    }

    public Equipment Equipment { get; }

    public Spread Spread { get; }

    public Surroundings Surroundings { get; }

    public Switches Switches { get; }

    public Ignition Ignition { get; }

    public Lamps Lamps { get; }

    public Flasher Flasher { get; }

    public Wipers Wipers { get; }

    public Doors Doors { get; }

    public Windows Windows { get; }

    public Mirrors Mirrors { get; }

    public Horn Horn { get; }

    public Climate Climate { get; }

    public Engine Engine { get; }

    public ElectricDrive ElectricDrive { get; }

    public Selector Selector { get; }

    public Brakes Brakes { get; }

    public Wheels Wheels { get; }

    public Restraint Restraint { get; }

    public Cluster Cluster { get; }

    public Seat Seat { get; }

    public Trailer Trailer { get; }

    public Leveller Leveller { get; }

    public PowerNet PowerNet { get; }

    public Body Body { get; }

    public Impressions Impressions { get; } = new();

    public TimeSpan Now => _schedule.Now;

    /// <summary>Whether engine or electric drive has been asked to run.</summary>
    public bool IsDriveOn => Engine.IsStarted || ElectricDrive.IsStarted;

    /// <summary>Called after a state has changed.</summary>
    public event Action? HasChanged;

    /// <summary>Says that a state has changed.</summary>
    public void Changed() => HasChanged?.Invoke();

    public void StartDrive()
    {
        if (Equipment.IsElectric) ElectricDrive.Start(Now);
        else Engine.Start(Now);
        Lamps.Refresh();
    }

    public void StopDrive()
    {
        Engine.Stop();
        ElectricDrive.Stop();
        Climate.DriveStopped();
    }

    public bool DriveRuns(TimeSpan now) => Equipment.IsElectric ? ElectricDrive.IsReady(now) : Engine.Runs(now);

    public TimeSpan? DriveRunsFor(TimeSpan now) => Equipment.IsElectric ? ElectricDrive.ReadyFor(now) : Engine.RunningFor(now);

    public bool DriveIsChanging(TimeSpan now) =>
        Engine.IsChanging(now) || ElectricDrive.IsChanging(now) ||
        (DriveRunsFor(now) is { } running && running.TotalSeconds <= Engine.OilLampSeconds);
}
