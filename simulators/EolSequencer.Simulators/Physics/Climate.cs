namespace EolSequencer.Simulators.Physics;

/// <summary>Blower, air flaps, compressor, vent and rear window heater.</summary>
internal sealed class Climate
{
    private const double AutomaticBlower = 0.4; // what the automatic asks of the blower once cooling is on
    private static readonly TimeSpan BlowerRunUp = TimeSpan.FromMilliseconds(120);
    private static readonly TimeSpan Cooling = TimeSpan.FromSeconds(4.5);
    private readonly Van _van;
    private readonly Ramp[] _air = [Ramp.Resting(0), Ramp.Resting(60), Ramp.Resting(40)];
    private readonly Ramp[] _mix = [Ramp.Resting(30), Ramp.Resting(30)];
    private readonly double _flapSpeed;
    private Approach _blower = Approach.Resting(0);
    private Approach _vent;
    private double? _blowerTaken;

    public Climate(Van van)
    {
        _van = van;
        var spread = van.Spread.Of("climate");
        FullBlowerAmps = spread.About(20, 0.8);
        CoolestVent = spread.About(6, 0.6);
        HeaterAmps = spread.About(13.5, 0.4) + (van.Equipment.HasHeatedMirrors ? spread.About(3.4, 0.2) : 0);
        _flapSpeed = spread.About(28, 1.5);
        _vent = Approach.Resting(van.Surroundings.Temperature);
    }

    public static IReadOnlyList<string> Flaps { get; } = ["face", "foot", "glass"];

    /// <summary>Current of the blower at its top step, in A.</summary>
    public double FullBlowerAmps { get; set; }

    /// <summary>Where the vent settles with the compressor on, in °C.</summary>
    public double CoolestVent { get; set; }

    public double HeaterAmps { get; set; }

    public bool IsCompressorDead { get; set; }

    public bool IsHeaterSwitchDead { get; set; }

    public bool[] StuckFlaps { get; } = new bool[3];

    public bool[] StuckMix { get; } = new bool[2];

    /// <summary>How far a temperature flap stays behind its target, left and right, in %.</summary>
    public double[] MixLag { get; } = new double[2];

    /// <summary>Windscreen ducts that give no air, left and right.</summary>
    public bool[] BlockedDucts { get; } = new bool[2];

    public bool IsCompressorOn { get; private set; }

    public bool IsHeaterOn { get; private set; }

    public double HeaterCurrent => IsHeaterOn ? HeaterAmps : 0;

    public double BlowerShare(TimeSpan now) => _blower.At(now);

    /// <summary>A fan's current goes with the square of what is asked of it here.</summary>
    public double BlowerCurrent(TimeSpan now) => FullBlowerAmps * _blower.At(now) * _blower.At(now);

    public double Vent(TimeSpan now) => _vent.At(now);

    public double Flap(int flap, TimeSpan now) => _air[flap].At(now);

    public double Mix(int side, TimeSpan now) => _mix[side].At(now);

    public bool IsMoving(TimeSpan now) =>
        _vent.IsMoving(now, 0.5) || _air[0].IsMoving(now) || _air[1].IsMoving(now) || _air[2].IsMoving(now) ||
        _mix[0].IsMoving(now) || _mix[1].IsMoving(now);

    public void PressCooling()
    {
        IsCompressorOn = !IsCompressorOn && _van.IsDriveOn && !IsCompressorDead;
        AdjustVent();
        AdjustBlower();
        _van.Changed();
    }

    public void PressHeater()
    {
        IsHeaterOn = !IsHeaterOn && _van.IsDriveOn && !IsHeaterSwitchDead;
        _van.Changed();
    }

    /// <summary>The drive has stopped: what it fed goes off.</summary>
    public void DriveStopped()
    {
        IsCompressorOn = IsHeaterOn = false;
        AdjustVent();
        AdjustBlower();
    }

    /// <summary>A diagnostic request sets the blower to a share of full speed, or with null gives it back.</summary>
    public void TakeBlower(double? share)
    {
        _blowerTaken = share;
        AdjustBlower();
        _van.Changed();
    }

    public void DriveFlap(int flap, double target)
    {
        if (!StuckFlaps[flap]) _air[flap] = _air[flap].Toward(target, _flapSpeed, _van.Now);
        _van.Changed();
    }

    public void DriveMix(double target)
    {
        for (var side = 0; side < 2; side++)
        {
            var reached = target > _mix[side].At(_van.Now) ? target - MixLag[side] : target + MixLag[side];
            if (!StuckMix[side]) _mix[side] = _mix[side].Toward(reached, _flapSpeed, _van.Now);
        }

        _van.Changed();
    }

    private void AdjustBlower() =>
        _blower = _blower.Toward(_blowerTaken ?? (IsCompressorOn ? AutomaticBlower : 0), BlowerRunUp, _van.Now);

    private void AdjustVent() =>
        _vent = _vent.Toward(IsCompressorOn ? CoolestVent : _van.Surroundings.Temperature, Cooling, _van.Now);
}
