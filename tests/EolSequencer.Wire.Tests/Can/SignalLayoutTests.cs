using CsCheck;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

// A signal cut out one bit beside its place gives plausible wrong numbers, so every layout is checked against bytes
// that others made. Sources: the test suite of cantools (tests/test_database.py with motorola and multiplex files)
// and cantools run on the layouts named here; rules, comments of cantools signal.py on start bits.
public class SignalLayoutTests
{
    [Theory]
    [InlineData(ByteOrder.Little, 0, 16, 0x1234, "3412")]
    [InlineData(ByteOrder.Big, 7, 16, 0x1234, "1234")]
    [InlineData(ByteOrder.Little, 4, 12, 0xABC, "C0AB")]
    [InlineData(ByteOrder.Big, 3, 12, 0xABC, "0ABC")]
    [InlineData(ByteOrder.Big, 11, 12, 0xABC, "000ABC")]
    [InlineData(ByteOrder.Little, 2, 9, 0x1A5, "9406")]
    [InlineData(ByteOrder.Big, 2, 5, 0x15, "0540")]
    [InlineData(ByteOrder.Little, 0, 64, 0x0123456789ABCDEF, "EFCDAB8967452301")]
    [InlineData(ByteOrder.Big, 7, 64, 0x0123456789ABCDEF, "0123456789ABCDEF")]
    [InlineData(ByteOrder.Little, 63, 1, 1, "0000000000000080")]
    [InlineData(ByteOrder.Big, 63, 1, 1, "0000000000000080")]
    [InlineData(ByteOrder.Little, 0, 1, 1, "01")]
    [InlineData(ByteOrder.Big, 0, 1, 1, "01")]
    public void Bits_lie_where_another_implementation_puts_them(
        ByteOrder order, int start, int count, ulong bits, string bytes)
    {
        var layout = new SignalLayout(start, count, order);
        var expected = Convert.FromHexString(bytes);
        var data = new byte[expected.Length];
        layout.WriteBits(data, bits);
        Assert.Equal(expected, data);
        Assert.Equal(bits, layout.ReadBits(expected));
        Assert.Equal(expected.Length, layout.BytesNeeded);
    }

    [Theory]
    [InlineData(ByteOrder.Little, 8, 8, "1", "0", "-1", "00FF")]
    [InlineData(ByteOrder.Big, 1, 10, "1", "0", "-2", "03FE")]
    [InlineData(ByteOrder.Little, 16, 16, "0.01", "0", "-12.34", "00002EFB")]
    [InlineData(ByteOrder.Big, 0, 12, "0.01", "250", "229.53", "010020")]
    [InlineData(ByteOrder.Big, 0, 12, "0.01", "250", "250.55", "0006E0")]
    public void Signed_values_scale_exactly(
        ByteOrder order, int start, int count, string factor, string offset, string value, string bytes) =>
        Check(new SignalLayout(start, count, order, SignalType.Signed), Scale(factor, offset), Text.Number(value), bytes);

    [Theory]
    [InlineData(ByteOrder.Little, 0, 16, "0.1", "-40", "25.0", "8A02")]
    [InlineData(ByteOrder.Little, 8, 16, "0.1", "0", "123.4", "00D204")]
    public void Unsigned_values_scale_exactly(
        ByteOrder order, int start, int count, string factor, string offset, string value, string bytes) =>
        Check(new SignalLayout(start, count, order), Scale(factor, offset), Text.Number(value), bytes);

    [Theory]
    [InlineData(ByteOrder.Little, 0, "1.5", "0000C03F")]
    [InlineData(ByteOrder.Big, 7, "1.5", "3FC00000")]
    [InlineData(ByteOrder.Big, 7, "0.1", "3DCCCCCD")]
    public void Float32_values_keep_their_decimal_text(ByteOrder order, int start, string value, string bytes) =>
        Check(new SignalLayout(start, 32, order, SignalType.Float32), Scale("1", "0"), Text.Number(value), bytes);

    // cantools tests/test_database.py: one frame, three signals that share bytes.
    [Fact]
    public void Three_big_endian_signals_share_a_frame()
    {
        var data = new byte[8];
        Write(data, new SignalLayout(0, 12, ByteOrder.Big, SignalType.Signed), Scale("0.01", "250"), 250.55m);
        Write(data, new SignalLayout(6, 6, ByteOrder.Big), Scale("0.1", "0"), 3.2m);
        Write(data, new SignalLayout(7, 1, ByteOrder.Big), Scale("1", "0"), 1);
        Assert.Equal("C006E00000000000", Convert.ToHexString(data));
    }

    // cantools tests/files/dbc/multiplex.dbc: single bits beside a selector.
    [Theory]
    [InlineData(8, "20008C0100000000", 18, 19, 23, 24)]
    [InlineData(16, "40008C0100000000", 18, 19, 23, 24)]
    [InlineData(24, "60008C35C3000000", 18, 19, 23, 24, 26, 28, 29, 32, 33, 38, 39)]
    public void Bits_beside_a_selector_lie_where_another_implementation_puts_them(ulong selector, string bytes, params int[] bits)
    {
        var data = new byte[8];
        new SignalLayout(2, 6, ByteOrder.Little).WriteBits(data, selector);
        foreach (var bit in bits)
        {
            new SignalLayout(bit, 1, ByteOrder.Little).WriteBits(data, 1);
        }

        Assert.Equal(bytes, Convert.ToHexString(data));
    }

    [Fact, Trait("case", "CAN-04")]
    public void A_big_endian_signal_is_not_read_with_little_endian_numbering()
    {
        var data = Convert.FromHexString("080ABE0000000000");
        Assert.Equal(27.50m, Read(data, new SignalLayout(15, 16, ByteOrder.Big), Scale("0.01", "0")));
        Assert.Equal(1UL, new SignalLayout(3, 1, ByteOrder.Big).ReadBits(data));
    }

    [Fact]
    public void A_value_between_two_steps_goes_to_the_nearer_one_and_half_to_even()
    {
        var layout = new SignalLayout(0, 8, ByteOrder.Little);
        Assert.True(layout.TryGetBits(Scale("0.5", "0").ToRaw(1.3m), out var bits));
        Assert.Equal(3UL, bits);
        Assert.True(layout.TryGetBits(2.5m, out bits));
        Assert.Equal(2UL, bits);
        Assert.True(layout.TryGetBits(3.5m, out bits));
        Assert.Equal(4UL, bits);
    }

    [Theory]
    [InlineData(SignalType.Unsigned, 8, "256")]
    [InlineData(SignalType.Unsigned, 8, "-1")]
    [InlineData(SignalType.Unsigned, 64, "18446744073709551616")]
    [InlineData(SignalType.Signed, 8, "128")]
    [InlineData(SignalType.Signed, 8, "-129")]
    [InlineData(SignalType.Signed, 1, "1")]
    [InlineData(SignalType.Signed, 64, "9223372036854775808")]
    public void A_value_that_the_signal_cannot_hold_is_refused(SignalType type, int count, string value) =>
        Assert.False(new SignalLayout(0, count, ByteOrder.Little, type).TryGetBits(Text.Number(value), out _));

    [Theory]
    [InlineData(SignalType.Unsigned, 64, "18446744073709551615")]
    [InlineData(SignalType.Signed, 64, "9223372036854775807")]
    [InlineData(SignalType.Signed, 64, "-9223372036854775808")]
    [InlineData(SignalType.Signed, 8, "-128")]
    [InlineData(SignalType.Signed, 8, "127")]
    public void The_ends_of_the_range_belong_to_it(SignalType type, int count, string value)
    {
        var layout = new SignalLayout(0, count, ByteOrder.Little, type);
        Assert.True(layout.TryGetBits(Text.Number(value), out var bits));
        Assert.True(layout.TryGetRaw(bits, out var raw));
        Assert.Equal(Text.Number(value), raw);
    }

    [Theory]
    [InlineData(0x7FC00000)]
    [InlineData(0x7F800000)]
    [InlineData(0xFF800000)]
    [InlineData(0x7F7FFFFF)]
    public void A_float32_without_a_decimal_number_has_no_raw_value(uint bits) =>
        Assert.False(new SignalLayout(0, 32, ByteOrder.Little, SignalType.Float32).TryGetRaw(bits, out _));

    [Fact]
    public void Reading_back_gives_what_was_written_and_leaves_the_rest() =>
        (from start in Gen.Int[0, 63]
         from count in Gen.Int[1, 64]
         from order in Gen.OneOf(ByteOrder.Little, ByteOrder.Big)
         from bits in Gen.ULong
         from fill in Gen.Byte.Array[24]
         select (layout: new SignalLayout(start, count, order), bits: bits >> (64 - count), fill))
        .Sample(c =>
        {
            var data = c.fill.ToArray();
            c.layout.WriteBits(data, c.bits);
            Assert.Equal(c.bits, c.layout.ReadBits(data));
            c.layout.WriteBits(data, c.layout.ReadBits(c.fill));
            Assert.Equal(c.fill, data);
        });

    [Theory]
    [InlineData(ByteOrder.Little, 8, 9, 2)]
    [InlineData(ByteOrder.Big, 8, 2, 2)]
    public void Fewer_bytes_than_the_signal_needs_are_refused(ByteOrder order, int start, int count, int bytes) =>
        Assert.Throws<ArgumentException>(() => new SignalLayout(start, count, order).ReadBits(new byte[bytes]));

    private static Scaling Scale(string factor, string offset) => new(Text.Number(factor), Text.Number(offset));

    private static void Check(SignalLayout layout, Scaling scale, decimal value, string bytes)
    {
        var data = new byte[bytes.Length / 2];
        Write(data, layout, scale, value);
        Assert.Equal(bytes, Convert.ToHexString(data));
        Assert.Equal(value, Read(data, layout, scale));
    }

    private static void Write(byte[] data, SignalLayout layout, Scaling scale, decimal value)
    {
        Assert.True(layout.TryGetBits(scale.ToRaw(value), out var bits));
        layout.WriteBits(data, bits);
    }

    private static decimal Read(byte[] data, SignalLayout layout, Scaling scale)
    {
        Assert.True(layout.TryGetRaw(layout.ReadBits(data), out var raw));
        return scale.ToPhysical(raw);
    }
}
