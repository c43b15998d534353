namespace EolSequencer.Wire.Uds;

/// <summary>The diagnostic services of ISO 14229-1 by their request byte; the positive response has it plus 40 (hex).</summary>
public enum ServiceId : byte
{
    DiagnosticSessionControl = 0x10,
    EcuReset = 0x11,
    ClearDiagnosticInformation = 0x14,
    ReadDtcInformation = 0x19,
    ReadDataByIdentifier = 0x22,
    ReadMemoryByAddress = 0x23,
    SecurityAccess = 0x27,
    CommunicationControl = 0x28,
    WriteDataByIdentifier = 0x2E,
    InputOutputControlByIdentifier = 0x2F,
    RoutineControl = 0x31,
    RequestDownload = 0x34,
    TransferData = 0x36,
    RequestTransferExit = 0x37,
    TesterPresent = 0x3E,
    ControlDtcSetting = 0x85,
    LinkControl = 0x87,
}
