using System.Text;
using CsCheck;
using EolSequencer.Wire.TextLines;

namespace EolSequencer.Wire.Tests.TextLines;

// Text devices differ in how they begin, end and check a text; what lies between must come out untouched.
public class TextReceiverTests
{
    private static readonly TextFraming Framed = new() { Start = [0x02], End = [0x03], Checksum = new TextChecksum(ChecksumKind.Xor, IsDigits: false, IsBehindEnd: true, CoversStart: false, CoversEnd: true) };

    [Fact, Trait("case", "SER-04")]
    public void A_line_feed_swallows_the_carriage_return_before_it() =>
        Assert.Equal(["1.25", "READY", ""], All(new TextFraming { End = LineEnd.Lf }, "1.25\r\nREADY\n\n"));

    [Fact, Trait("case", "SER-03")]
    public void A_text_ends_at_its_end_and_not_at_a_pause()
    {
        var receiver = new TextReceiver(new TextFraming());
        receiver.Add("+1.23"u8);
        Assert.False(receiver.TryTake(out _));
        receiver.Add("4E+01\r"u8);
        Assert.False(receiver.TryTake(out _));
        receiver.Add("\n"u8);
        Assert.True(receiver.TryTake(out var text));
        Assert.Equal("+1.234E+01", Encoding.ASCII.GetString(text.Value));
    }

    [Fact]
    public void A_fixed_length_needs_no_end() =>
        Assert.Equal(["0123", "4567"], All(new TextFraming { Length = 4, End = [] }, "0123456789"));

    [Fact]
    public void Bytes_in_front_of_a_start_are_told()
    {
        var texts = All(Framed, $"xy\u0002AB\u0003{(char)('A' ^ 'B' ^ 3)}");
        Assert.Equal(["! bytes that belong to no text: xy", "AB"], texts);
    }

    [Fact]
    public void A_start_of_several_bytes_may_come_in_pieces()
    {
        var receiver = new TextReceiver(new TextFraming { Start = [0x10, 0x02], End = [0x10, 0x03] });
        receiver.Add([0x10]);
        Assert.False(receiver.TryTake(out _));
        receiver.Add([0x02, (byte)'a', 0x10, 0x03]);
        Assert.True(receiver.TryTake(out var text));
        Assert.Equal("a"u8.ToArray(), text.Value);
    }

    [Fact]
    public void A_wrong_checksum_is_told_and_the_next_text_is_right()
    {
        var good = Encoding.Latin1.GetString(Framed.Make("W 12.5"u8));
        var bad = good.Replace("12.5", "12.4", StringComparison.Ordinal);
        Assert.Equal(["! checksum 6C instead of 6D at 'W 12.4'", "W 12.5"], All(Framed, bad + good));
    }

    [Theory]
    [InlineData(ChecksumKind.Xor, "31")]
    [InlineData(ChecksumKind.Sum, "DD")]
    [InlineData(ChecksumKind.NegatedSum, "23")]
    [InlineData(ChecksumKind.CrcModbus, "374B")]
    [InlineData(ChecksumKind.CrcCcitt, "29B1")]
    public void Checksums_of_123456789(ChecksumKind kind, string digits) =>
        Assert.Equal(digits, Checksum.Digits(Checksum.Of(kind, "123456789"u8)));

    [Fact]
    public void Every_framing_gives_back_what_was_framed() =>
        (from kind in Gen.OneOf(Enum.GetValues<ChecksumKind>())
         from flags in Gen.Bool.Array[4]
         from bodies in Gen.OneOf(Gen.Char['A', 'z'].Array[0, 20].Select(letters => Encoding.ASCII.GetBytes(letters))).Array[1, 5]
         from cut in Gen.Int[1, 7]
         select (framing: new TextFraming { Start = flags[0] ? [0x02] : [], End = [0x0D, 0x0A], Checksum = flags[1] ? new TextChecksum(kind, IsDigits: !flags[2], IsBehindEnd: flags[2], flags[3], !flags[3]) : null }, bodies, cut))
        .Sample(c =>
        {
            var receiver = new TextReceiver(c.framing);
            var came = new List<byte[]>();
            foreach (var piece in c.bodies.SelectMany(body => c.framing.Make(body)).Chunk(c.cut))
            {
                receiver.Add(piece);
                while (receiver.TryTake(out var text)) came.Add(text.Value);
            }

            Assert.Equal(c.bodies, came);
        });

    [Fact]
    public void What_never_ends_is_given_up() =>
        Assert.StartsWith("! 65540 bytes without an end", Assert.Single(All(new TextFraming(), new string('x', 65_540))), StringComparison.Ordinal);

    [Theory]
    [InlineData("CR LF", "0D0A")]
    [InlineData("STX", "02")]
    [InlineData("0x1C", "1C")]
    [InlineData("; ETX", "3B03")]
    public void Control_characters_have_names(string text, string bytes)
    {
        Assert.True(ControlBytes.TryParse(text, out var read));
        Assert.Equal(bytes, Text.Hex(read.ToArray()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("crlf")]
    [InlineData("CR crlf")]
    [InlineData("0x1")]
    public void Other_names_are_none(string text) => Assert.False(ControlBytes.TryParse(text, out _));

    [Fact]
    public void Bytes_are_shown_by_name() => Assert.Equal("1.2<CR><LF><E4>", ControlBytes.Show([(byte)'1', (byte)'.', (byte)'2', 13, 10, 0xE4]));

    private static List<string> All(TextFraming framing, string bytes)
    {
        var receiver = new TextReceiver(framing);
        receiver.Add(Encoding.Latin1.GetBytes(bytes));
        var texts = new List<string>();
        while (receiver.TryTake(out var text)) texts.Add(text.Fault is { } fault ? $"! {fault}" : Encoding.ASCII.GetString(text.Value));
        return texts;
    }
}
