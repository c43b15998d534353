namespace EolSequencer.Wire.Modbus;

/// <summary>What a row of registers stands for.</summary>
public enum RegisterType
{
    Int16,
    UInt16,
    Int32,
    UInt32,
    Int64,
    UInt64,

    /// <summary>IEEE 754 binary32.</summary>
    Float32,

    /// <summary>IEEE 754 binary64.</summary>
    Float64,
}
