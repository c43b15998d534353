namespace EolSequencer.Wire.Uds;

/// <summary>What a control unit restarts (ISO 14229-1, resetType).</summary>
public enum ResetKind : byte
{
    Hard = 0x01,
    KeyOffOn = 0x02,
    Soft = 0x03,
    EnableRapidPowerShutDown = 0x04,
    DisableRapidPowerShutDown = 0x05,
}
