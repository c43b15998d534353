namespace EolSequencer.Wire.Modbus;

/// <summary>Why a MODBUS server refuses.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3 (modbus.org), clause 7.</remarks>
public enum ExceptionCode : byte
{
    IllegalFunction = 1,
    IllegalDataAddress = 2,
    IllegalDataValue = 3,
    ServerDeviceFailure = 4,
    Acknowledge = 5,
    ServerDeviceBusy = 6,
    MemoryParityError = 8,
    GatewayPathUnavailable = 10,
    GatewayTargetDeviceFailedToRespond = 11,
}
