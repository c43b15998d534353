using System.Text;
using CsCheck;
using EolSequencer.Records.Exporting;

namespace EolSequencer.Records.Tests.Exporting;

/// <summary>Texts of people go into a table that a spreadsheet opens: it must read what was written, and obey none of it.</summary>
public sealed class CsvTextTests
{
    [Theory]
    [InlineData("lamp", "lamp")]
    [InlineData("1.60 .. 2.40 A", "1.60 .. 2.40 A")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("5\" bolt", "\"5\"\" bolt\"")]
    [InlineData("two\r\nlines", "\"two\r\nlines\"")]
    [InlineData("=HYPERLINK(\"x\")", "\"'=HYPERLINK(\"\"x\"\")\"")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@x", "'@x")]
    [InlineData("  =1", "'  =1")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("\u200B=1", "'\u200B=1")]
    [InlineData("\t=1", "\u2409=1")]
    [InlineData("'quoted", "''quoted")]
    [InlineData("bell\u0007\u0000\u007F\u009B", "bell\u2407\u2400\u2421\uFFFD")]
    public void A_text_is_quoted_and_made_harmless(string text, string written) => Assert.Equal(written, CsvText.Of(text));

    [Theory]
    [InlineData("-0.50", ExportKind.Decimal)]
    [InlineData("=1", ExportKind.Text)]
    [InlineData("-1e5", ExportKind.Text)]
    public void A_measured_number_stays_one_and_nothing_else_passes_for_one(string text, object kind)
    {
        var value = ExportValue.Measured(text);

        Assert.Equal(kind, value.Kind);
        Assert.Equal(value.Kind == ExportKind.Decimal ? text : "'" + text, CsvText.Of(value));
    }

    [Fact]
    public void Any_text_is_read_back_by_the_rules_of_RFC_4180() => Gen.OneOf(Nasty, Gen.String).Array[1, 6].Sample(texts =>
    {
        var line = string.Join(',', texts.Select(CsvText.Of));
        var read = ReadBack(line);

        Assert.Equal(texts.Select(Visible), read.Select(text => text.StartsWith('\'') ? text[1..] : text));
        Assert.DoesNotContain(read, text => text.TrimStart() is ['=' or '+' or '-' or '@', ..]);
        Assert.DoesNotContain(line, character => char.IsControl(character) && character is not ('\r' or '\n'));
    });

    private static readonly Gen<string> Nasty = Gen.Char["=+-@'\",\r\n\t\0 \u200Ba1\uFF1D"].Array[0, 8].Select(characters => new string(characters));

    /// <summary>The text with pictures for its control characters, said again in other words.</summary>
    private static string Visible(string text) => string.Concat(text.Select(character => char.IsControl(character) && character is not ('\r' or '\n')
        ? (int)character switch { 127 => '\u2421', < 32 => (char)(0x2400 + character), _ => '\uFFFD' }
        : character));

    /// <summary>Section 2 of RFC 4180 as a reader of one record: quotes around a value, doubled within.</summary>
    private static List<string> ReadBack(string line)
    {
        var values = new List<string>();
        var at = 0;
        while (true)
        {
            var value = new StringBuilder();
            if (at < line.Length && line[at] == '"')
            {
                for (at++; line[at] != '"' || (at + 1 < line.Length && line[at + 1] == '"'); at++)
                {
                    if (line[at] == '"') at++;
                    value.Append(line[at]);
                }

                at++;
            }
            else
            {
                for (; at < line.Length && line[at] != ','; at++)
                {
                    Assert.False(line[at] is '"' or '\r' or '\n', $"an unquoted value holds {(int)line[at]}: {line}");
                    value.Append(line[at]);
                }
            }

            values.Add(value.ToString());
            if (at >= line.Length) return values;
            Assert.Equal(',', line[at++]);
        }
    }
}
