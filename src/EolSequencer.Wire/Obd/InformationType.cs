namespace EolSequencer.Wire.Obd;

/// <summary>What service 09 can be asked for.</summary>
public enum InformationType : byte
{
    /// <summary>Which types a unit supports, as a bitmap.</summary>
    Supported = 0x00,

    /// <summary>The vehicle identification number, one text of 17 characters.</summary>
    VehicleNumber = 0x02,

    /// <summary>Calibration identifiers, texts of up to 16 characters.</summary>
    CalibrationIds = 0x04,

    /// <summary>Calibration verification numbers, four bytes each.</summary>
    VerificationNumbers = 0x06,
}
