using CsCheck;
using EolSequencer.Wire.Modbus;

namespace EolSequencer.Wire.Tests.Modbus;

// Vectors: the examples of MODBUS Application Protocol Specification V1.1b3 (modbus.org), clause 6.
public class FunctionTests
{
    [Theory]
    [InlineData(FunctionCode.ReadCoils, 0x13, 19, "0100130013", "0103CD6B05", "1011001111010110101")]
    [InlineData(FunctionCode.ReadDiscreteInputs, 0xC4, 22, "0200C40016", "0203ACDB35", "0011010111011011101011")]
    public void Bits_are_read(FunctionCode function, int address, int count, string request, string response, string bits)
    {
        var row = new Row((ushort)address, count);
        Assert.Equal(request, Text.Hex(ReadBits.MakeRequest(function, row)));
        Assert.True(ReadBits.TryReadRequest(Text.Bytes(request), out var read));
        Assert.Equal(row, read);
        Assert.Equal(bits, string.Concat(ReadBits.ReadResponse(Text.Bytes(response), function, count).Value.Select(bit => bit ? '1' : '0')));
        Assert.Equal(response, Text.Hex(ReadBits.MakeResponse(function, [.. bits.Select(bit => bit == '1')])));
    }

    [Theory]
    [InlineData(FunctionCode.ReadHoldingRegisters, 0x6B, 3, "03006B0003", "0306022B00000064", "022B 0000 0064")]
    [InlineData(FunctionCode.ReadInputRegisters, 0x08, 1, "0400080001", "0402000A", "000A")]
    public void Registers_are_read(FunctionCode function, int address, int count, string request, string response, string registers)
    {
        var row = new Row((ushort)address, count);
        Assert.Equal(request, Text.Hex(ReadRegisters.MakeRequest(function, row)));
        Assert.True(ReadRegisters.TryReadRequest(Text.Bytes(request), out var read));
        Assert.Equal(row, read);
        var came = ReadRegisters.ReadResponse(Text.Bytes(response), function, count).Value;
        Assert.Equal(registers, string.Join(' ', came.Select(register => register.ToString("X4", System.Globalization.CultureInfo.InvariantCulture))));
        Assert.Equal(response, Text.Hex(ReadRegisters.MakeResponse(function, came)));
    }

    [Fact]
    public void One_coil_or_register_is_written()
    {
        Assert.Equal("0500ACFF00", Text.Hex(WriteSingle.MakeRequest(0xAC, isOn: true)));
        Assert.Equal("0600010003", Text.Hex(WriteSingle.MakeRequest(1, 3)));
        Assert.True(WriteSingle.TryReadRequest(Text.Bytes("0500ACFF00"), out ushort address, out bool isOn));
        Assert.Equal((0xAC, true), (address, isOn));
        Assert.False(WriteSingle.TryReadRequest(Text.Bytes("0500AC0001"), out _, out bool _));
        Assert.Null(WriteSingle.ReadResponse(Text.Bytes("0600010003"), Text.Bytes("0600010003")).Fault);
        Assert.Contains("does not repeat", WriteSingle.ReadResponse(Text.Bytes("0600010004"), Text.Bytes("0600010003")).Fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_are_written()
    {
        bool[] coils = [true, false, true, true, false, false, true, true, true, false];
        Assert.Equal("0F0013000A02CD01", Text.Hex(WriteMultiple.MakeRequest(0x13, coils)));
        Assert.Equal("100001000204000A0102", Text.Hex(WriteMultiple.MakeRequest(1, [0x000A, 0x0102])));
        Assert.True(WriteMultiple.TryReadRequest(Text.Bytes("0F0013000A02CD01"), out var at, out bool[] read));
        Assert.Equal(coils, read);
        Assert.Equal(0x13, at);
        Assert.False(WriteMultiple.TryReadRequest(Text.Bytes("100001000304000A0102"), out _, out ushort[] _));
        Assert.Equal("0F0013000A", Text.Hex(WriteMultiple.MakeResponse(Text.Bytes("0F0013000A02CD01"))));
    }

    [Theory]
    [InlineData("8302", "refused: 02 illegal data address")]
    [InlineData("830B", "refused: 0B gateway target device failed to respond")]
    [InlineData("8377", "refused: 77")]
    [InlineData("0402000A", "no answer to function 3: 0402000A")]
    [InlineData("03040001", "the answer counts 4 bytes and has 2")]
    [InlineData("03020001", "2 bytes of data instead of 4")]
    [InlineData("", "no answer to function 3: ")]
    public void A_refusal_is_named_and_nonsense_is_told(string response, string fault) =>
        Assert.Equal(fault, ReadRegisters.ReadResponse(Text.Bytes(response), FunctionCode.ReadHoldingRegisters, 2).Fault);

    [Fact]
    public void No_bytes_at_all_make_the_codecs_stumble() =>
        (from bytes in Gen.Byte.Array[0, 30] from function in Gen.OneOf(Enum.GetValues<FunctionCode>()) from isAnswer in Gen.Bool select (bytes, function, isAnswer))
        .Sample(c =>
        {
            if (c.bytes.Length > 0 && c.isAnswer) c.bytes[0] = (byte)c.function;
            _ = ReadBits.ReadResponse(c.bytes, c.function, 16);
            _ = ReadRegisters.ReadResponse(c.bytes, c.function, 1);
            _ = WriteSingle.ReadResponse(c.bytes, [5, 0, 0, 0, 0]);
            _ = WriteMultiple.TryReadRequest(c.bytes, out _, out bool[] _);
            _ = WriteMultiple.TryReadRequest(c.bytes, out _, out ushort[] _);
            _ = WriteSingle.TryReadRequest(c.bytes, out _, out bool _);
        });
}
