using CsCheck;
using EolSequencer.Wire.Modbus;

namespace EolSequencer.Wire.Tests.Modbus;

// A wrong order or type gives numbers that look like measured ones.
public class RegisterNumberTests
{
    private static readonly RegisterType[] Types = Enum.GetValues<RegisterType>();
    private static readonly WordOrder[] Orders = Enum.GetValues<WordOrder>();

    [Fact, Trait("case", "MOD-01")]
    public void The_order_of_words_decides()
    {
        Assert.Equal(230.5m, new RegisterNumber(RegisterType.Float32, WordOrder.Abcd).Read([0x4366, 0x8000]).Value);
        Assert.Equal(230.5m, new RegisterNumber(RegisterType.Float32, WordOrder.Cdab).Read([0x8000, 0x4366]).Value);
        Assert.Equal(230.5m, new RegisterNumber(RegisterType.Float32, WordOrder.Badc).Read([0x6643, 0x0080]).Value);
        Assert.Equal(230.5m, new RegisterNumber(RegisterType.Float32, WordOrder.Dcba).Read([0x0080, 0x6643]).Value);
        var wrong = new RegisterNumber(RegisterType.Float32, WordOrder.Abcd).Read([0x8000, 0x4366]);
        Assert.Equal("-2.4178E-41 is too small to be a quantity; is the order of its bytes right?", wrong.Fault);
    }

    [Theory, Trait("case", "MOD-04")]
    [InlineData(RegisterType.Int16, -200)]
    [InlineData(RegisterType.UInt16, 65336)]
    public void The_sign_is_a_matter_of_type(RegisterType type, int number) =>
        Assert.Equal(number, new RegisterNumber(type, WordOrder.Abcd).Read([0xFF38]).Value);

    [Theory]
    [InlineData(WordOrder.Abcd, 2, "AB")]
    [InlineData(WordOrder.Dcba, 2, "BA")]
    [InlineData(WordOrder.Cdab, 4, "CDAB")]
    [InlineData(WordOrder.Badc, 4, "BADC")]
    [InlineData(WordOrder.Cdab, 8, "GHEFCDAB")]
    [InlineData(WordOrder.Badc, 8, "BADCFEHG")]
    [InlineData(WordOrder.Dcba, 8, "HGFEDCBA")]
    public void Orders_are_spelled_as_byte_letters(WordOrder order, int bytes, string name)
    {
        Assert.Equal(name, order.Name(bytes));
        Assert.True(WordOrders.TryParse(name, bytes, out var read));
        Assert.Equal(name, read.Name(bytes));
    }

    [Theory]
    [InlineData("big", 4)]
    [InlineData("CDAB", 8)]
    [InlineData("abcd", 4)]
    [InlineData("", 2)]
    public void Other_names_are_none(string name, int bytes) => Assert.False(WordOrders.TryParse(name, bytes, out _));

    [Fact]
    public void A_whole_number_comes_back_as_it_was_written() =>
        (from type in Gen.OneOf(Types.Where(type => type is not (RegisterType.Float32 or RegisterType.Float64)).ToArray())
         from order in Gen.OneOf(Orders)
         from bits in Gen.ULong
         select (number: new RegisterNumber(type, order), bits))
        .Sample(c =>
        {
            var registers = new ushort[c.number.Registers];
            for (var i = 0; i < registers.Length; i++) registers[i] = (ushort)(c.bits >> (16 * i));
            Assert.Equal(registers, c.number.Write(c.number.Read(registers).Value).Value);
        });

    [Fact]
    public void A_floating_number_comes_back_as_it_was_written() =>
        (from order in Gen.OneOf(Orders) from number in Gen.Float[-1e6f, 1e6f] select (order, number))
        .Sample(c =>
        {
            var type = new RegisterNumber(RegisterType.Float32, c.order);
            if (type.Read(type.Write((decimal)c.number).Value) is { Fault: null, Value: var read }) Assert.Equal((float)(decimal)c.number, (float)read);
        });

    [Theory]
    [InlineData(RegisterType.Int16, "32768")]
    [InlineData(RegisterType.UInt16, "-1")]
    [InlineData(RegisterType.UInt32, "4294967296")]
    [InlineData(RegisterType.UInt64, "18446744073709551616")]
    public void What_does_not_fit_is_told(RegisterType type, string number) =>
        Assert.Equal($"{number} does not fit into {type}", new RegisterNumber(type, WordOrder.Abcd).Write(Text.Number(number)).Fault);

    [Theory]
    [InlineData(0x7FC0)]
    [InlineData(0x7F80)]
    [InlineData(0xFF80)]
    public void No_quantity_is_infinite_or_no_number(int high) =>
        Assert.EndsWith("is no quantity", new RegisterNumber(RegisterType.Float32, WordOrder.Abcd).Read([(ushort)high, 0]).Fault, StringComparison.Ordinal);

    [Theory, Trait("case", "MOD-02")]
    [InlineData("40001", RegisterTable.HoldingRegisters, 0)]
    [InlineData("400001", RegisterTable.HoldingRegisters, 0)]
    [InlineData("30012", RegisterTable.InputRegisters, 11)]
    [InlineData("10001", RegisterTable.DiscreteInputs, 0)]
    [InlineData("00005", RegisterTable.Coils, 4)]
    [InlineData("465536", RegisterTable.HoldingRegisters, 65535)]
    public void A_reference_number_counts_from_1(string text, RegisterTable table, int address)
    {
        Assert.True(ReferenceNumber.TryParse(text, out var readTable, out var readAddress));
        Assert.Equal((table, address), (readTable, readAddress));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("40000")]
    [InlineData("20001")]
    [InlineData("465537")]
    [InlineData("4001")]
    [InlineData("4x001")]
    public void Other_numbers_are_no_references(string text) => Assert.False(ReferenceNumber.TryParse(text, out _, out _));
}
