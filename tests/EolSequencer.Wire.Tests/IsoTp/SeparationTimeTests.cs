using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

// Two programs misread this byte: one shows microseconds as milliseconds, one rejects reserved values.
// Source: ISO 15765-2:2016, 9.6.5.4 and 9.6.5.5; net/can/isotp.c of the Linux kernel does the same.
public class SeparationTimeTests
{
    [Theory, Trait("case", "ITP-05")]
    [InlineData(0x00, 0)]
    [InlineData(0x14, 20_000)]
    [InlineData(0x7F, 127_000)]
    [InlineData(0x80, 127_000)]
    [InlineData(0xF0, 127_000)]
    [InlineData(0xF1, 100)]
    [InlineData(0xF5, 500)]
    [InlineData(0xF9, 900)]
    [InlineData(0xFA, 127_000)]
    [InlineData(0xFF, 127_000)]
    public void A_byte_stands_for_a_gap(byte raw, int microseconds) =>
        Assert.Equal(TimeSpan.FromMicroseconds(microseconds), SeparationTime.Decode(raw));

    [Theory]
    [InlineData(0, 0x00)]
    [InlineData(1, 0xF1)]
    [InlineData(100, 0xF1)]
    [InlineData(101, 0xF2)]
    [InlineData(900, 0xF9)]
    [InlineData(901, 0x01)]
    [InlineData(1_000, 0x01)]
    [InlineData(1_001, 0x02)]
    [InlineData(127_000, 0x7F)]
    public void A_gap_is_never_made_shorter(int microseconds, byte raw) =>
        Assert.Equal(raw, SeparationTime.Encode(TimeSpan.FromMicroseconds(microseconds)));

    [Theory]
    [InlineData(-1)]
    [InlineData(127_001)]
    public void A_gap_that_no_byte_stands_for_is_refused(int microseconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SeparationTime.Encode(TimeSpan.FromMicroseconds(microseconds)));
}
