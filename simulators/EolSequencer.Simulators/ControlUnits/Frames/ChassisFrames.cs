using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits.Frames;

/// <summary>Frames of brakes, cluster, steering, climate and assistance.</summary>
internal static class ChassisFrames
{
    /// <summary>1B0: wheel speeds.</summary>
    public static bool WheelSpeeds(Van van, TimeSpan now, Span<byte> payload)
    {
        for (var wheel = 0; wheel < 4; wheel++) Raw.WordLittle(payload[(2 * wheel)..], van.Wheels.Speed[wheel], 0.01);
        return false;
    }

    /// <summary>1B4: pedal and parking brake.</summary>
    public static bool Brakes(Van van, TimeSpan now, Span<byte> payload)
    {
        payload[0] = Raw.Byte(van.Brakes.TravelAt(now), 0.5);
        Raw.Bit(payload, 8, van.Brakes.IsClamped(now));
        payload[2] = Raw.Byte(van.Brakes.ClampAmps[0], 0.2);
        payload[3] = Raw.Byte(van.Brakes.ClampAmps[1], 0.2);
        return van.Brakes.IsMoving(now);
    }

    /// <summary>1D0: lamps and sounds of the cluster.</summary>
    public static bool Cluster(Van van, TimeSpan now, Span<byte> payload)
    {
        for (var lamp = 0; lamp < 12; lamp++) Raw.Bit(payload, lamp, van.Cluster.IsLampOn(lamp, now));
        Raw.Bit(payload, 16, van.Cluster.Chimes(now));
        for (var telltale = 0; telltale < 4; telltale++) Raw.Bit(payload, 17 + telltale, van.Cluster.IsTelltaleOn(telltale, now));
        return van.Cluster.IsMoving(now);
    }

    /// <summary>1E0: steering angle.</summary>
    public static bool Steering(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.SignedWordLittle(payload, van.Wheels.SteeringAngle, 0.1);
        return false;
    }

    /// <summary>2A0: climate.</summary>
    public static bool Climate(Van van, TimeSpan now, Span<byte> payload)
    {
        payload[0] = Raw.Byte(van.Climate.Vent(now), 0.5, -40);
        Raw.Bit(payload, 8, van.Climate.IsCompressorOn);
        for (var flap = 0; flap < 3; flap++) payload[2 + flap] = Raw.Byte(van.Climate.Flap(flap, now), 0.5);
        for (var side = 0; side < 2; side++) payload[5 + side] = Raw.Byte(van.Climate.Mix(side, now), 0.5);
        return van.Climate.IsMoving(now);
    }

    /// <summary>2B0: parking distances.</summary>
    public static bool Distances(Van van, TimeSpan now, Span<byte> payload)
    {
        for (var board = 0; board < 8; board++) payload[board] = Raw.Byte(van.Surroundings.BoardDistance[board], 0.02);
        return false;
    }

    /// <summary>2C0: rear camera.</summary>
    public static bool Camera(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.Bit(payload, 0, van.Selector.ShowsPicture(now));
        return van.Selector.AwaitsPicture(now);
    }
}
