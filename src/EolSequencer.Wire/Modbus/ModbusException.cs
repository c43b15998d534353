using System.Globalization;

namespace EolSequencer.Wire.Modbus;

/// <summary>The answer of a MODBUS server that refuses: the function code with its highest bit set, then the reason.</summary>
public static class ModbusException
{
    /// <summary>Marks a function code as refused.</summary>
    public const byte Mark = 0x80;

    /// <summary>Bytes of a refusal.</summary>
    public const int Length = 2;

    public static byte[] Make(byte function, ExceptionCode code) => [(byte)(function | Mark), (byte)code];

    /// <summary>Whether a message is the refusal of a function.</summary>
    public static bool TryRead(ReadOnlySpan<byte> message, FunctionCode function, out ExceptionCode code)
    {
        var isRefusal = message.Length == Length && message[0] == ((byte)function | Mark);
        code = isRefusal ? (ExceptionCode)message[1] : default;
        return isRefusal;
    }

    /// <summary>The code as people look it up: <c>02 illegal data address</c>; an unlisted one as its two digits.</summary>
    public static string Describe(ExceptionCode code)
    {
        var digits = ((byte)code).ToString("X2", CultureInfo.InvariantCulture);
        var name = code switch
        {
            ExceptionCode.IllegalFunction => "illegal function",
            ExceptionCode.IllegalDataAddress => "illegal data address",
            ExceptionCode.IllegalDataValue => "illegal data value",
            ExceptionCode.ServerDeviceFailure => "server device failure",
            ExceptionCode.Acknowledge => "acknowledge",
            ExceptionCode.ServerDeviceBusy => "server device busy",
            ExceptionCode.MemoryParityError => "memory parity error",
            ExceptionCode.GatewayPathUnavailable => "gateway path unavailable",
            ExceptionCode.GatewayTargetDeviceFailedToRespond => "gateway target device failed to respond",
            _ => null,
        };
        return name is null ? digits : $"{digits} {name}";
    }
}
