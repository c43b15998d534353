namespace EolSequencer.Wire.Modbus;

/// <summary>What is asked of a MODBUS server.</summary>
/// <remarks>Source: MODBUS Application Protocol Specification V1.1b3 (modbus.org), clause 6.</remarks>
public enum FunctionCode : byte
{
    ReadCoils = 1,
    ReadDiscreteInputs = 2,
    ReadHoldingRegisters = 3,
    ReadInputRegisters = 4,
    WriteSingleCoil = 5,
    WriteSingleRegister = 6,
    WriteMultipleCoils = 15,
    WriteMultipleRegisters = 16,
}
