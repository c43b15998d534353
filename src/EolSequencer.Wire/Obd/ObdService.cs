namespace EolSequencer.Wire.Obd;

/// <summary>The emissions services that are coded here, by their request byte; the response has it plus 40 (hex).</summary>
/// <remarks>Source: SAE J1979 and ISO 15031-5, over CAN (ISO 15765-4).</remarks>
public enum ObdService : byte
{
    CurrentData = 0x01,
    FreezeFrame = 0x02,
    StoredCodes = 0x03,
    ClearCodes = 0x04,
    PendingCodes = 0x07,
    VehicleInformation = 0x09,
    PermanentCodes = 0x0A,
}
