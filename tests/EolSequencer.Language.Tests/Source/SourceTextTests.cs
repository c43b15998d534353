using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Tests.Source;

/// <summary>The record keeps the hash of every file used, and every diagnostic stands on lines and columns: both begin here.</summary>
public sealed class SourceTextTests
{
    [Fact]
    public void The_hash_is_that_of_the_exact_bytes() =>
        // FIPS 180-4 example: SHA-256 of "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Texts.Source("abc").Sha256);

    [Fact]
    public void A_byte_order_mark_belongs_to_the_bytes_and_not_to_the_text()
    {
        var report = new Report();
        var source = SourceText.TryDecode("a.yaml", [0xEF, 0xBB, 0xBF, .. "key: 1"u8], report)!;
        Assert.Equal("key: 1", source.Text);
        Assert.Equal(9, source.Bytes.Length);
        Assert.NotEqual(Texts.Source("key: 1").Sha256, source.Sha256);
    }

    [Theory]
    [InlineData("a\nb\nc")]
    [InlineData("a\r\nb\r\nc")]
    [InlineData("a\rb\rc")]
    public void Every_kind_of_line_end_gives_the_same_lines(string text)
    {
        var source = Texts.Source(text);
        Assert.Equal(3, source.LineCount);
        Assert.Equal(["a", "b", "c"], Enumerable.Range(1, 3).Select(line => source.Line(line).ToString()));
        Assert.Equal(3, source.LineOf(source.Text.IndexOf('c')));
        Assert.Equal(1, source.ColumnOf(source.Text.IndexOf('c')));
    }

    [Fact]
    public void An_offset_and_its_line_and_column_lead_to_each_other()
    {
        var source = Texts.Source("ä: 1\r\n\r\n  b: 😀 x\n");
        for (var offset = 0; offset <= source.Text.Length; offset++)
            Assert.Equal(offset, source.OffsetOf(source.LineOf(offset), source.ColumnOf(offset)));
    }

    [Theory]
    [InlineData(0, 5, 0)]
    [InlineData(1, 99, 4)]
    [InlineData(9, 1, 4)]
    public void A_place_outside_is_moved_into_the_text(int line, int column, int offset) =>
        Assert.Equal(offset, Texts.Source("abcd").OffsetOf(line, column));

    [Fact]
    public void A_file_just_within_the_bound_is_decoded_and_one_byte_more_is_not()
    {
        var report = new Report();
        Assert.NotNull(SourceText.TryDecode("a", new byte[SourceText.MostBytes].Select(_ => (byte)'#').ToArray(), report));
        Assert.Empty(report.InOrder);
        Assert.Null(SourceText.TryDecode("a", new byte[SourceText.MostBytes + 1], report));
        Assert.Equal(FileCodes.TooLarge, Assert.Single(report.InOrder).Code);
    }

    [Theory]
    [InlineData("FIL008", 2, 6, "6B 65 79 3A 0A 61 3A 20 22 67 E4 22")] // Latin-1 behind the first line
    [InlineData("FIL008", 1, 1, "80 61")]
    [InlineData("FIL008", 1, 2, "61 C3")] // cut in the middle of a letter
    [InlineData("FIL008", 1, 2, "61 ED A0 80")] // half of a surrogate pair
    [InlineData("FIL007", 1, 5, "7F 45 4C 46 00 01")]
    [InlineData("FIL007", 1, 2, "EF BB BF 61 00")]
    [InlineData("FIL008", 0, 0, "FF FE 61 00")]
    [InlineData("FIL008", 0, 0, "FE FF 00 61")]
    public void Bytes_that_are_no_text_are_refused_at_their_place(string code, int line, int column, string hex)
    {
        var report = new Report();
        Assert.Null(SourceText.TryDecode("a.yaml", Convert.FromHexString(hex.Replace(" ", "")), report));
        var finding = Assert.Single(report.InOrder);
        Assert.Equal((code, line, column), (finding.Code.Id, finding.Place.Line, finding.Place.Column));
    }

    [Fact]
    public void All_letters_survive()
    {
        const string text = "é µ Ω 度 😀 ° ±";
        Assert.Equal(text, Texts.Source(text).Text);
        Assert.Equal(Encoding.UTF8.GetByteCount(text), Texts.Source(text).Bytes.Length);
    }
}
