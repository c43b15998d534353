using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits.Frames;

/// <summary>Frames of engine or electric drive, and of the high-voltage battery.</summary>
internal static class DriveFrames
{
    /// <summary>1C0: drive and selector.</summary>
    public static bool Drive(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.Bit(payload, 0, van.Engine.Cranks(now));
        Raw.Bit(payload, 1, van.Engine.Runs(now));
        Raw.Bit(payload, 2, van.ElectricDrive.IsReady(now));
        payload[0] |= (byte)(van.Selector.Gear << 4);
        for (var position = 0; position < 4; position++) Raw.Bit(payload, 8 + position, van.Selector.Reports(position));
        return van.Engine.IsChanging(now) || van.ElectricDrive.IsChanging(now);
    }

    /// <summary>1C4: engine speed.</summary>
    public static bool Engine(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.WordLittle(payload, van.Engine.Speed(now), 0.25);
        return van.Engine.IsStarted;
    }

    /// <summary>3A0: high voltage.</summary>
    public static bool HighVoltage(Van van, TimeSpan now, Span<byte> payload)
    {
        Raw.WordLittle(payload, van.ElectricDrive.LinkVoltage(now), 0.1);
        Raw.WordLittle(payload[2..], van.ElectricDrive.PackVoltage, 0.1);
        Raw.Bit(payload, 32, van.ElectricDrive.IsPrecharging(now));
        return van.ElectricDrive.IsChanging(now);
    }
}
