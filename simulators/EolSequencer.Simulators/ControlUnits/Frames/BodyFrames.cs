using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits.Frames;

/// <summary>Frames of gateway, door units and seat: switches, what the body drives, windows and mirrors.</summary>
internal static class BodyFrames
{
    /// <summary>1A0: switches.</summary>
    public static bool Switches(Van van, TimeSpan now, Span<byte> payload)
    {
        var (switches, doors) = (van.Switches, van.Doors);
        Raw.Bit(payload, 0, van.Ignition.IsOn);
        Raw.Bit(payload, 1, van.Ignition.IsButtonPressed);
        Raw.Bit(payload, 2, van.Ignition.IsRefusing(now));
        Raw.Bit(payload, 3, van.Brakes.IsSwitchOn);
        Raw.Bit(payload, 5, switches.IsHazard);
        Raw.Bit(payload, 6, switches.IsHorn);
        for (var door = 0; door < 5; door++) Raw.Bit(payload, 8 + door, doors.IsAjar(door));
        Raw.Bit(payload, 13, doors.IsHoodOpen);
        for (var seat = 0; seat < 2; seat++) Raw.Bit(payload, 16 + seat, van.Restraint.IsBuckled(seat));
        for (var door = 0; door < Doors.Locks; door++) Raw.Bit(payload, 24 + door, doors.IsLocked(door));
        Raw.Bit(payload, 32, switches.IsPark);
        Raw.Bit(payload, 33, switches.IsLow);
        Raw.Bit(payload, 34, switches.IsHigh);
        Raw.Bit(payload, 40, switches.Turn == 0);
        Raw.Bit(payload, 41, switches.Turn == 1);
        Raw.Bit(payload, 44, switches.IsWasher);
        Raw.Bit(payload, 48, switches.Wiper == 0);
        Raw.Bit(payload, 49, switches.Wiper == 1);
        return van.Ignition.IsRefusing(now);
    }

    /// <summary>1A4: what the body drives.</summary>
    public static bool Outputs(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.Bit(payload, 0, van.Flasher.IsLit(0, now));
        Raw.Bit(payload, 1, van.Flasher.IsLit(1, now));
        Raw.Bit(payload, 2, van.Wipers.IsParked(now));
        Raw.Bit(payload, 3, van.Climate.IsHeaterOn);
        Raw.Bit(payload, 4, van.Trailer.IsPresent);
        return van.Flasher.IsRunning || van.Wipers.IsMoving(now);
    }

    /// <summary>1A8: windows, mirrors and headlamp leveller.</summary>
    public static bool Positions(Van van, TimeSpan now, Span<byte> payload)
    {
        for (var side = 0; side < 2; side++)
        {
            Raw.Bit(payload, side, van.Windows.IsMotorOn(side, now));
            payload[1 + side] = Raw.Byte(van.Windows.Position(side, now), 0.5);
        }

        for (var axis = 0; axis < 4; axis++) payload[3 + axis] = Raw.Byte(van.Mirrors.Position(axis, now), 0.5);
        payload[7] = Raw.Byte(van.Leveller.Position(now), 0.5);
        return van.Windows.IsMoving(now) || van.Mirrors.IsMoving(now) || van.Leveller.IsMoving(now);
    }

    /// <summary>1AC: what the window motors draw.</summary>
    public static bool WindowCurrents(Van van, TimeSpan now, Span<byte> payload)
    {
        for (var side = 0; side < 2; side++) payload[side] = Raw.Byte(van.Windows.Current(side, now), 0.1);
        return van.Windows.IsMoving(now);
    }

    /// <summary>1E8: driver's seat.</summary>
    public static bool Seat(Van van, TimeSpan now, Span<byte> payload)
    {
        payload[0] = Raw.Byte(van.Seat.Position(now), 1);
        Raw.Bit(payload, 8, van.Seat.IsMotorOn(now));
        return van.Seat.IsMotorOn(now);
    }

    /// <summary>3D0: the gateway keeps the bus awake.</summary>
    public static bool Awake(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.Bit(payload, 0, true);
        return false;
    }

    /// <summary>3E0: surroundings.</summary>
    public static bool Surroundings(Van van, TimeSpan now, Span<byte> payload)
    {
        payload[0] = Raw.Byte(van.Surroundings.Temperature, 0.5, -40);
        return false;
    }
}
