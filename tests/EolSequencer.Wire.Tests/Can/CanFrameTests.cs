using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

// Frames are the currency between links, testers and control units: none may exist that no bus could carry.
public class CanFrameTests
{
    [Theory]
    [InlineData("7E0#0322F190")]
    [InlineData("000#")]
    [InlineData("7FF#FFFFFFFFFFFFFFFF")]
    [InlineData("18DA55F1#0322F190CCCCCCCC")]
    [InlineData("00000123#01")]
    [InlineData("7E0##0000AAABBCCDDEEFF00112233")]
    [InlineData("18DA55F1##1013E00")]
    public void A_frame_reads_back_from_its_text(string text) =>
        Assert.Equal(text, CanFrame.Parse(text).ToString());

    [Theory]
    [InlineData("7E00322F190")]
    [InlineData("7E0#0")]
    [InlineData("7E0#0G")]
    [InlineData("7E#00")]
    [InlineData("800#00")]
    [InlineData("20000000#00")]
    [InlineData("7E0#000102030405060708")]
    [InlineData("7E0##2000")]
    [InlineData("7E0##")]
    [InlineData("7E0##1000102030405060708")]
    [InlineData("")]
    public void A_text_that_no_bus_could_carry_is_refused(string text) =>
        Assert.Throws<FormatException>(() => CanFrame.Parse(text));

    [Fact]
    public void A_frame_with_the_same_bytes_elsewhere_in_memory_is_equal()
    {
        byte[] twice = [1, 2, 3, 1, 2, 3];
        var first = CanFrame.Classical(CanId.Base(0x123), twice.AsMemory(0, 3));
        var second = CanFrame.Classical(CanId.Base(0x123), twice.AsMemory(3, 3));
        Assert.Equal(first, second);
        Assert.Equal(first.GetHashCode(), second.GetHashCode());
    }

    [Theory]
    [InlineData("123#0102", "123#0103")]
    [InlineData("123#0102", "123#010200")]
    [InlineData("123#0102", "124#0102")]
    [InlineData("123#0102", "00000123#0102")]
    [InlineData("123#0102", "123##10102")]
    [InlineData("123##00102", "123##10102")]
    public void Frames_that_differ_anywhere_on_the_bus_are_not_equal(string first, string second) =>
        Assert.NotEqual(CanFrame.Parse(first), CanFrame.Parse(second));

    [Fact]
    public void Identifiers_end_at_11_and_29_bits()
    {
        Assert.Equal(0x7FFu, CanId.Base(0x7FF).Value);
        Assert.Equal(0x1FFF_FFFFu, CanId.Extended(0x1FFF_FFFF).Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => CanId.Base(0x800));
        Assert.Throws<ArgumentOutOfRangeException>(() => CanId.Extended(0x2000_0000));
    }
}
