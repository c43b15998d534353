using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

// The length code is where CAN FD and classical CAN differ; a wrong step loses or invents bytes.
// Source of the table: ISO 11898-1, data length code; the same steps stand in Linux drivers/net/can/dev/length.c.
public class DataLengthTests
{
    [Theory]
    [InlineData(8, 8)]
    [InlineData(9, 12)]
    [InlineData(10, 16)]
    [InlineData(11, 20)]
    [InlineData(12, 24)]
    [InlineData(13, 32)]
    [InlineData(14, 48)]
    [InlineData(15, 64)]
    public void Codes_above_eight_stand_for_longer_FD_frames(int code, int length)
    {
        Assert.Equal(length, DataLength.Of(code, isFd: true));
        Assert.Equal(8, DataLength.Of(code, isFd: false));
        Assert.Equal(code, DataLength.CodeFor(length));
    }

    [Fact]
    public void Rounding_up_gives_the_smallest_length_that_fits()
    {
        int[] lengths = [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64];
        for (var wanted = 0; wanted <= 64; wanted++)
        {
            Assert.Equal(lengths.First(length => length >= wanted), DataLength.RoundUp(wanted));
            Assert.Equal(lengths.Contains(wanted), DataLength.Fits(wanted));
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(65)]
    [InlineData(320)]
    public void No_frame_is_shorter_than_0_or_longer_than_64_bytes(int length)
    {
        Assert.False(DataLength.Fits(length));
        Assert.Throws<ArgumentOutOfRangeException>(() => DataLength.CodeFor(length));
    }
}
