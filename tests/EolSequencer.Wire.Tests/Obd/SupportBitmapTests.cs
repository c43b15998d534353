using CsCheck;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Tests.Obd;

// Asking for what a unit does not have ends in silence, so the bitmap decides what can be tested.
// Values agree with the dissection of tshark 4.0.17.
public class SupportBitmapTests
{
    [Theory]
    [InlineData(0x00, "BE3EA813", "0103040506070B0C0D0E0F1113151C1F20")]
    [InlineData(0x20, "0007A015", "2E2F3031333C3E40")]
    public void The_first_bit_is_the_next_number(byte first, string bits, string supported)
    {
        Assert.Equal(Text.Bytes(supported), SupportBitmap.Read(first, Text.Bytes(bits)));
        Assert.Equal(Text.Bytes(bits), SupportBitmap.Write(first, Text.Bytes(supported)));
    }

    [Fact]
    public void The_last_bit_is_set_when_anything_follows()
    {
        byte[] supported = [0x0C, 0x42];
        Assert.Equal([0x0C, 0x20], SupportBitmap.Read(0x00, SupportBitmap.Write(0x00, supported)));
        Assert.Equal([0x40], SupportBitmap.Read(0x20, SupportBitmap.Write(0x20, supported)));
        Assert.Equal([0x42], SupportBitmap.Read(0x40, SupportBitmap.Write(0x40, supported)));
    }

    [Fact]
    public void Bits_and_numbers_are_the_same_thing() =>
        Gen.Select(Gen.Int[0, 7], Gen.Byte.Array[4]).Sample((block, bits) =>
        {
            var first = (byte)(block * 32);
            bits[3] &= (byte)(block == 7 ? 0xFE : 0xFF); // number 100 (hex) does not exist
            Assert.Equal(bits, SupportBitmap.Write(first, SupportBitmap.Read(first, bits)));
        });
}
