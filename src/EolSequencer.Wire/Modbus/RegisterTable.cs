namespace EolSequencer.Wire.Modbus;

/// <summary>The four tables of a MODBUS server; each begins at address 0 of its own.</summary>
public enum RegisterTable
{
    /// <summary>Bits that can be written; reference numbers 0xxxx.</summary>
    Coils = 0,

    /// <summary>Bits that can only be read; reference numbers 1xxxx.</summary>
    DiscreteInputs = 1,

    /// <summary>Registers that can only be read; reference numbers 3xxxx.</summary>
    InputRegisters = 3,

    /// <summary>Registers that can be written; reference numbers 4xxxx.</summary>
    HoldingRegisters = 4,
}
