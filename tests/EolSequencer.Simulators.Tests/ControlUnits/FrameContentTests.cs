using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Tests.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>What happens on the vehicle must stand in the bits the vehicle type file names, and nowhere else.</summary>
public sealed class FrameContentTests
{
    private readonly VirtualTime _time;
    private readonly SimulatedVehicle _vehicle;

    public FrameContentTests() => (_time, _vehicle) = Vans.New();

    private Van Van => _vehicle.Van;

    [Fact]
    public void Doors_locks_buckles_and_hood()
    {
        Van.Doors.Move(2, open: true);
        Assert.Equal("1A0#0004000000000000", Frame(0x1A0)); // bit 10: rear
        Van.Doors.Move(2, open: false);
        Van.Doors.MoveHood(open: true);
        Assert.Equal("1A0#0020000000000000", Frame(0x1A0)); // bit 13
        Van.Doors.MoveHood(open: false);
        Van.Restraint.Buckle(1, true);
        Assert.Equal("1A0#0000020000000000", Frame(0x1A0)); // bit 17
        Van.Restraint.Buckle(1, false);
        Van.Doors.Lock(true);
        Assert.Equal("1A0#0000000F00000000", Frame(0x1A0)); // bits 24 to 27
    }

    [Fact]
    public void Stalks_and_switches()
    {
        Van.Switches.Light(park: false, low: true, high: true);
        Van.Switches.Stalk(1);
        Van.Switches.Wipe(1);
        Van.Switches.PullWasher(true);
        Van.Switches.Hazard(true);
        Van.Switches.PressHorn(true);
        Assert.Equal("1A0#6000000006120200", Frame(0x1A0)); // bits 5, 6, 33, 34, 41, 44, 49
    }

    [Fact]
    public void Ignition_start_button_refusal_and_brake()
    {
        Van.Ignition.Press();
        Assert.Equal("1A0#0300000000000000", Frame(0x1A0));
        Van.Ignition.Release();
        Van.Ignition.Press();
        Assert.Equal("1A0#0700000000000000", Frame(0x1A0)); // bit 2: refused without the brake
        Van.Ignition.Release();
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("1A0#0100000000000000", Frame(0x1A0)); // held for one second
        Van.Brakes.Press(true);
        Assert.Equal("1A0#0900000000000000", Frame(0x1A0));
    }

    [Fact]
    public void Selector_and_gear()
    {
        Assert.Equal("1C0#0001000000000000", Frame(0x1C0));
        Van.Ignition.Press();
        Van.Brakes.Press(true);
        Van.Selector.Select(Selector.Reverse);
        Assert.Equal("1C0#E002000000000000", Frame(0x1C0)); // gear 14 in bits 4 to 7, reverse in bit 9
    }

    [Fact]
    public void Engine_speed_from_rest_to_the_starter()
    {
        Assert.Equal("1C4#0000000000000000", Frame(0x1C4));
        Van.Ignition.Press();
        Van.Ignition.Release();
        Van.Brakes.Press(true);
        Van.Ignition.Press();
        _time.Advance(TimeSpan.FromMilliseconds(400));
        var bytes = Convert.FromHexString(Frame(0x1C4)[4..]);
        Assert.InRange((bytes[0] + (256 * bytes[1])) * 0.25, 200, 240); // 220 1/min and its jitter
    }

    [Fact]
    public void Out_of_park_only_with_brake_and_ignition()
    {
        Van.Selector.Select(Selector.Reverse);
        Assert.Equal(Selector.Park, Van.Selector.Position);
        Van.Ignition.Press();
        Van.Selector.Select(Selector.Reverse);
        Assert.Equal(Selector.Park, Van.Selector.Position);
    }

    [Fact]
    public void Wheel_speeds_and_steering_angle_lie_low_byte_first()
    {
        Van.Wheels.Speed[1] = 2.57;
        Van.Wheels.SteeringAngle = -1.2;
        Assert.Equal("1B0#0000010100000000", Frame(0x1B0));
        Assert.Equal("1E0#F4FF000000000000", Frame(0x1E0));
        Van.Wheels.Speed[0] = double.NaN;
        Van.Changed();
        Assert.Equal("1B0#FFFF010100000000", Frame(0x1B0));
    }

    [Fact]
    public void Lamp_check_goes_through_its_stages()
    {
        Van.Ignition.Press();
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("1D0#FF03110000000000", Frame(0x1D0)); // all ten lamps of a petrol van, chime, passenger bag off
        _time.Advance(TimeSpan.FromSeconds(3));
        Assert.Equal("1D0#9C03110000000000", Frame(0x1D0)); // brake, restraint, belt, charge; engine, oil
        _time.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal("1D0#9403100000000000", Frame(0x1D0)); // without restraint and chime
        Van.Restraint.Buckle(0, true);
        Van.Brakes.Press(true);
        Van.Ignition.Press();
        _time.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal("1D0#0400100000000000", Frame(0x1D0)); // parking brake alone
    }

    [Fact]
    public void A_window_needs_its_time_and_its_motor_stops_at_the_end()
    {
        Van.Ignition.Press();
        Van.Windows.Travel[0] = 4;
        Van.Windows.Drive(0, up: false);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("1A8#0193C8", Frame(0x1A8)[..10]); // motor left; 73.5 % in steps of 0.5 %, at the next instant of its cycle
        _time.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal("1A8#0000C8", Frame(0x1A8)[..10]);
    }

    [Fact]
    public void Turn_lamps_flash_at_their_rate_after_the_first_delay()
    {
        Van.Ignition.Press();
        Van.Flasher.PerMinute = 90;
        var heard = new HeardFrames();
        using var listening = _vehicle.Port.Listen(CanId.Base(0x1A4), heard, Repeats.MayBeSkipped);
        var start = _time.Now;
        Van.Switches.Stalk(0);
        _time.Advance(TimeSpan.FromSeconds(6.2));
        var edges = heard.Frames.Where(frame => frame.Frame[5] == '5').Select(frame => frame.At).ToArray(); // bit 0 with the park contact
        Assert.Equal(10, edges.Length); // one at the start, nine more in six seconds
        Assert.InRange(edges[0] - start, Van.Flasher.FirstLight[0], Van.Flasher.FirstLight[0] + 21.Ms);
        Assert.InRange((edges[9] - edges[0]).TotalSeconds, 5.97, 6.03);
    }

    private string Frame(uint id)
    {
        var heard = new HeardFrames();
        var cycle = UnitTypes.All.SelectMany(type => type.Frames).First(frame => frame.Id == id).CycleMs;
        using var listening = _vehicle.Port.Listen(CanId.Base(id), heard, Repeats.MayBeSkipped);
        _time.Advance((cycle + 2).Ms);
        return heard.Frames[^1].Frame;
    }
}
