namespace EolSequencer.Wire.Tests;

// Part numbers and vehicle numbers come in fields that are longer than they are.
public class PaddedTextTests
{
    [Theory]
    [InlineData("41423130", "AB10")]
    [InlineData("4142313000FF2020", "AB10")]
    [InlineData("41422031", "AB 1")]
    [InlineData("0000", "")]
    [InlineData("", "")]
    public void Padding_is_dropped_at_the_end_only(string field, string text) =>
        Assert.Equal(text, PaddedText.Read(Text.Bytes(field)).Value);

    [Theory]
    [InlineData("41004200", "illegal byte 00 in a text, at place 2")]
    [InlineData("0041", "illegal byte 00 in a text, at place 1")]
    [InlineData("417F", "illegal byte 7F in a text, at place 2")]
    [InlineData("41E442", "illegal byte E4 in a text, at place 2")]
    public void Other_bytes_are_told_and_not_dropped(string field, string fault)
    {
        var read = PaddedText.Read(Text.Bytes(field));
        Assert.Equal(fault, read.Fault);
        Assert.False(read.TryGet(out _));
        Assert.Throws<InvalidOperationException>(() => read.Value);
    }

    [Fact]
    public void A_field_is_filled_up()
    {
        var field = new byte[6];
        PaddedText.Write(field, "AB10", padding: 0x20);
        Assert.Equal(Text.Bytes("414231302020"), field);
        Assert.Throws<ArgumentException>(() => PaddedText.Write(field, "1234567"));
        Assert.Throws<ArgumentException>(() => PaddedText.Write(field, "é"));
    }
}
