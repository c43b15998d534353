using System.Buffers.Binary;

namespace EolSequencer.Wire.Modbus;

/// <summary>Small hands for the functions: big-endian numbers, heads, faults in one wording.</summary>
internal static class Pdu
{
    /// <summary>Function code and two numbers.</summary>
    public const int HeadLength = 5;

    public static ushort UInt16(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt16BigEndian(bytes);

    public static byte[] Head(FunctionCode function, ushort first, ushort second) =>
        [(byte)function, (byte)(first >> 8), (byte)first, (byte)(second >> 8), (byte)second];

    /// <summary>A request for a row.</summary>
    /// <param name="most">How long a row the function takes.</param>
    public static byte[] Request(FunctionCode function, Row row, int most) => row.IsWithin && row.Count <= most
        ? Head(function, row.Address, (ushort)row.Count)
        : throw new ArgumentOutOfRangeException(nameof(row), row, $"1 to {most} within 0 to 65535");

    /// <summary>The row that a request of five bytes asks for; false: its length or count is wrong.</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, int most, out Row row)
    {
        row = message.Length == HeadLength ? new Row(UInt16(message[1..]), UInt16(message[3..])) : default;
        return row.Count > 0 && row.Count <= most;
    }

    /// <summary>A response with its data behind their count.</summary>
    public static byte[] Response(FunctionCode function, byte[] data) => [(byte)function, (byte)data.Length, .. data];

    /// <summary>The bytes of a response that repeats the first five of its request.</summary>
    public static Decoded<byte[]> Echo(ReadOnlySpan<byte> message, ReadOnlySpan<byte> request) =>
        EchoFault(message, request) is { } fault ? Decoded<byte[]>.Faulty(fault) : message.ToArray();

    /// <summary>Eight bits to a byte, the first in the lowest place.</summary>
    public static byte[] Pack(ReadOnlySpan<bool> bits)
    {
        var bytes = new byte[(bits.Length + 7) / 8];
        for (var i = 0; i < bits.Length; i++) bytes[i / 8] |= (byte)(bits[i] ? 1 << (i % 8) : 0);
        return bytes;
    }

    public static bool[] Unpack(ReadOnlySpan<byte> bytes, int count)
    {
        var bits = new bool[count];
        for (var i = 0; i < count; i++) bits[i] = (bytes[i / 8] & (1 << (i % 8))) != 0;
        return bits;
    }

    public static byte[] Pack(ReadOnlySpan<ushort> registers)
    {
        var bytes = new byte[2 * registers.Length];
        for (var i = 0; i < registers.Length; i++) BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(2 * i), registers[i]);
        return bytes;
    }

    public static ushort[] Unpack(ReadOnlySpan<byte> bytes)
    {
        var registers = new ushort[bytes.Length / 2];
        for (var i = 0; i < registers.Length; i++) registers[i] = UInt16(bytes[(2 * i)..]);
        return registers;
    }

    /// <summary>What keeps a message from being the answer to a function, with data of some length behind its count; null: nothing.</summary>
    public static string? DataFault(ReadOnlySpan<byte> message, FunctionCode function, int length)
    {
        if (HeadFault(message, function) is { } fault) return fault;
        if (message.Length < 2 || message[1] != message.Length - 2) return $"the answer counts {(message.Length < 2 ? 0 : message[1])} bytes and has {Math.Max(0, message.Length - 2)}";
        return message[1] == length ? null : $"{message[1]} bytes of data instead of {length}";
    }

    private static string? EchoFault(ReadOnlySpan<byte> message, ReadOnlySpan<byte> request)
    {
        if (HeadFault(message, (FunctionCode)request[0]) is { } fault) return fault;
        return message.SequenceEqual(request[..HeadLength]) ? null : $"the answer {Convert.ToHexString(message)} does not repeat the request {Convert.ToHexString(request[..HeadLength])}";
    }

    private static string? HeadFault(ReadOnlySpan<byte> message, FunctionCode function)
    {
        if (ModbusException.TryRead(message, function, out var code)) return $"refused: {ModbusException.Describe(code)}";
        return message.Length > 0 && message[0] == (byte)function ? null : $"no answer to function {(byte)function}: {Convert.ToHexString(message)}";
    }
}
