using CsCheck;
using EolSequencer.Language.Csv;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Csv;

/// <summary>Tables come from other people's programs: what RFC 4180 allows is read, and the rest is refused with its place.</summary>
public sealed class CsvReaderTests
{
    /// <summary>The examples of RFC 4180, section 2.</summary>
    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\"bb|ccc/zzz|yyy|xxx")]
    [InlineData("a,b\n1,2\n", "a|b/1|2")]
    [InlineData("a,b\n,\n", "a|b/|")]
    [InlineData("a,b\n 1 ,2", "a|b/ 1 |2")]
    [InlineData("\uFEFFa,b\n1,2", "a|b/1|2")]
    public void A_table_is_read_as_the_standard_says(string text, string cells)
    {
        var report = new Report();
        var table = CsvReader.Read(Texts.Source(text), report)!;

        Assert.Empty(report.InOrder);
        Assert.Equal(cells, string.Join('/', new[] { table.Columns }.Concat(table.Rows).Select(row => string.Join('|', row.Select(cell => cell.Text)))));
    }

    [Theory]
    [InlineData("", "test.yaml:1:1: error CSV001")]
    [InlineData("\na,b", "test.yaml:1:1: error CSV001")]
    [InlineData("a,b\n1,2,3\n1", "test.yaml:2:1: error CSV002", "test.yaml:3:1: error CSV002")]
    [InlineData("a,b\n1;2", "test.yaml:2:1: error CSV002")]
    [InlineData("a,b\n\n1,2", "test.yaml:2:1: error CSV002")]
    [InlineData("a,b\nx \"1\",2", "test.yaml:2:3: error CSV003")]
    [InlineData("a,b\n\"1\" ,2", "test.yaml:2:4: error CSV003")]
    [InlineData("a,b\n1,\"2", "test.yaml:2:3: error CSV003")]
    [InlineData("a,,a\n", "test.yaml:1:3: error CSV004", "test.yaml:1:4: error CSV004")]
    public void What_is_no_table_is_refused_with_its_place(string text, params string[] found)
    {
        var report = new Report();

        Assert.Null(CsvReader.Read(Texts.Source(text), report));
        Assert.Equal(found, report.InOrder.Select(finding => finding.ToString()[..finding.ToString().IndexOf(": ", finding.ToString().IndexOf("error", StringComparison.Ordinal), StringComparison.Ordinal)]));
    }

    [Fact]
    public void As_many_lines_are_read_as_are_allowed()
    {
        var report = new Report();
        Assert.Equal(CsvReader.MostRows, CsvReader.Read(Texts.Source("a\n" + string.Concat(Enumerable.Repeat("1\n", CsvReader.MostRows))), report)!.Rows.Count);
        Assert.Null(CsvReader.Read(Texts.Source("a\n" + string.Concat(Enumerable.Repeat("1\n", CsvReader.MostRows + 1))), report));
        Assert.Equal("CSV005", Assert.Single(report.InOrder).Code.Id);
    }

    [Fact]
    public void What_is_written_is_read_again() =>
        Any("a", "b c", "x,y", "\"", "", "1 .. 2 V", "two\nlines", "µ").Array[3].Array[1, 5].Sample(rows =>
        {
            var text = "one,two,three\r\n" + string.Concat(rows.Select(row => string.Join(',', row.Select(Written)) + "\r\n"));
            var table = CsvReader.Read(Texts.Source(text), new Report())!;
            Assert.Equal(rows, table.Rows.Select(row => row.Select(cell => cell.Text).ToArray()));
        }, iter: 2_000);

    [Fact]
    public void Any_text_is_a_table_or_refused_with_a_place() =>
        Any("a", ",", "\"", "\n", "\r", "é", "1").Array[0, 30].Sample(parts =>
        {
            var report = new Report();
            var table = CsvReader.Read(Texts.Source(string.Concat(parts)), report);
            Assert.Equal(table is null, report.HasErrors);
            Assert.All(report.InOrder, finding => Assert.True(finding.Place.Line >= 1));
        }, iter: 5_000);

    private static Gen<string> Any(params string[] all) => Gen.Int[0, all.Length - 1].Select(at => all[at]);

    private static string Written(string cell) => cell.AsSpan().IndexOfAny(",\"\n") >= 0 ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
}
