namespace EolSequencer.Wire.Uds;

/// <summary>The sessions of ISO 14229-1; others belong to the vehicle maker.</summary>
public enum DiagnosticSession : byte
{
    /// <summary>The session after start-up and after S3 has run out.</summary>
    Default = 0x01,
    Programming = 0x02,
    Extended = 0x03,
    SafetySystem = 0x04,
}
