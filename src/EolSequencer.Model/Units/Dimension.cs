namespace EolSequencer.Model.Units;

/// <summary>What kind of quantity a unit measures. Only units of one dimension convert into each other.</summary>
/// <remarks>
/// Dimensions follow the shop floor, not physics: revolutions per minute of a shaft are not a lamp's flashes per minute,
/// a share of volume is not a share of anything else, and a difference of temperatures has no zero point.
/// </remarks>
public enum Dimension
{
    Voltage,
    Current,
    Resistance,
    ResistancePerVoltage,
    Power,
    Energy,
    Charge,
    Force,
    Torque,
    Pressure,
    Speed,
    Acceleration,
    RotationalSpeed,
    Frequency,
    Time,
    Length,
    Opacity,
    Mass,
    Volume,
    VolumeFlow,
    MassFlow,
    LeakRate,
    Temperature,
    TemperatureDifference,
    Ratio,
    VolumeShare,
    Angle,
    Level,
    SoundLevel,
    LuminousIntensity,
    Illuminance,
}
