using CsCheck;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

// The simulated bus takes its time from these lengths; a bus that is too fast hides a vehicle that is too slow.
// Sources: totals, "can: length" patch of the Linux kernel (include/linux/can/length.h and its table of frame sizes);
// exact lengths, the frame-length code of can-utils (canframelen.c) run on the same frames.
public class FrameBitsTests
{
    [Theory]
    [InlineData(8, false, false, 111, 135)]
    [InlineData(8, true, false, 131, 160)]
    [InlineData(64, false, true, 579, 712)]
    [InlineData(64, true, true, 598, 736)]
    [InlineData(0, false, true, 62, 67)]
    [InlineData(8, false, true, 126, 147)]
    [InlineData(12, false, true, 158, 187)]
    [InlineData(16, false, true, 190, 227)]
    [InlineData(20, false, true, 227, 272)]
    [InlineData(24, false, true, 259, 312)]
    [InlineData(32, false, true, 323, 392)]
    [InlineData(48, false, true, 451, 552)]
    [InlineData(0, true, true, 81, 91)]
    [InlineData(8, true, true, 145, 171)]
    [InlineData(12, true, true, 177, 211)]
    [InlineData(16, true, true, 209, 251)]
    [InlineData(20, true, true, 246, 296)]
    [InlineData(24, true, true, 278, 336)]
    [InlineData(32, true, true, 342, 416)]
    [InlineData(48, true, true, 470, 576)]
    public void Bounds_are_the_published_ones(int bytes, bool isExtended, bool isFd, int unstuffed, int worst)
    {
        Assert.Equal(unstuffed, FrameBits.Unstuffed(bytes, isExtended, isFd));
        Assert.Equal(worst, FrameBits.Worst(bytes, isExtended, isFd));
    }

    [Theory]
    [InlineData("000#", 0x0000, 6, 53)]
    [InlineData("000#0000000000000000", 0x145B, 16, 127)]
    [InlineData("7E8#0000000000000000", 0x6F2B, 15, 126)]
    [InlineData("7E8#FFFFFFFFFFFFFFFF", 0x09E1, 14, 125)]
    [InlineData("7FF#FFFFFFFFFFFFFFFF", 0x4C89, 15, 126)]
    [InlineData("123#3C3C3C3C3C3C3C3C", 0x5398, 16, 127)]
    [InlineData("7E0#0322F190CCCCCCCC", 0x6CC3, 3, 114)]
    [InlineData("7E0#0322F190AAAAAAAA", 0x08C4, 3, 114)]
    [InlineData("7E0#0322F19055555555", 0x559C, 4, 115)]
    [InlineData("7E0#0322F19000000000", 0x6154, 10, 121)]
    [InlineData("7DF#02010C", 0x4654, 5, 76)]
    [InlineData("7DF#02010C0000000000", 0x5649, 12, 123)]
    [InlineData("18DA55F1#0322F190CCCCCCCC", 0x3E92, 3, 134)]
    public void A_classical_frame_has_its_exact_length(string text, int crc, int stuffBits, int bits)
    {
        var frame = CanFrame.Parse(text);
        Assert.Equal(stuffBits, FrameBits.ClassicalStuffing(frame, out var computed));
        Assert.Equal(crc, computed);
        Assert.Equal(bits, FrameBits.Of(frame));
    }

    [Fact]
    public void No_frame_leaves_its_bounds() =>
        Frames.Any.Sample(frame => Assert.InRange(
            FrameBits.Of(frame),
            FrameBits.Unstuffed(frame.Data.Length, frame.IsExtended, frame.IsFd),
            FrameBits.Worst(frame.Data.Length, frame.IsExtended, frame.IsFd)));

    [Fact]
    public void The_table_counts_as_many_bits_as_going_over_them_one_by_one() =>
        Frames.Any.Sample(frame => Assert.Equal(BitByBit.Length(frame), FrameBits.Of(frame)));

    [Theory]
    [InlineData(-1, false)]
    [InlineData(9, false)]
    [InlineData(9, true)]
    [InlineData(65, true)]
    public void A_length_that_no_frame_has_is_refused(int bytes, bool isFd) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FrameBits.Unstuffed(bytes, isExtended: false, isFd));
}
