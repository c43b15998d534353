using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using EolSequencer.Records.Tests.Chain;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Tests.Verify;

namespace EolSequencer.Records.Tests.Independent;

/// <summary>
/// A record must stand without this program: <c>verify_record.py</c>, written from the description alone on Python's standard library and
/// openssl, finds whole what is whole, and every flipped bit.
/// </summary>
public sealed class IndependentVerifierTests(RecordOfThreeRuns untouched) : IClassFixture<RecordOfThreeRuns>
{
    [Fact]
    public void A_whole_record_is_whole()
    {
        SkipWhereNotPossible();
        using var folder = untouched.Copy();

        Assert.Equal((0, "3 runs, 10 ledger entries, 0 findings"), Verify(folder));
    }

    [Theory]
    [InlineData("event", "bytes")]
    [InlineData("event", "hash")]
    [InlineData("ledger", "bytes")]
    [InlineData("ledger", "hash")]
    [InlineData("seal", "signature")]
    [InlineData("station_key", "public")]
    [InlineData("source", "bytes")]
    public void A_flipped_bit_is_found_in_the_first_a_middle_and_the_last_row(string table, string column)
    {
        SkipWhereNotPossible();
        var rows = untouched.Folder.Ask<long>($"SELECT rowid FROM {table} ORDER BY rowid");
        foreach (var row in new[] { rows[0], rows[rows.Length / 2], rows[^1] }.Distinct())
        {
            using var folder = untouched.Copy();
            var bytes = folder.Ask<byte[]>($"SELECT {column} FROM {table} WHERE rowid = @row", new { row })[0];
            bytes[bytes.Length / 2] ^= 1;
            folder.Tamper($"UPDATE {table} SET {column} = @bytes WHERE rowid = @row", new { bytes, row });

            var (code, output) = Verify(folder);

            Assert.True(code == 1 && output.EndsWith(" findings", StringComparison.Ordinal), $"{table}.{column} row {row}: exit {code.ToString(CultureInfo.InvariantCulture)}\n{output}");
        }
    }

    [Theory]
    [InlineData("DELETE FROM event WHERE run = 2 AND n = 7", "run row 2 event 7: missing")]
    [InlineData("DELETE FROM event WHERE run = 2 AND n > 10", "run startup_1-000002: its last event is not the one in the ledger")]
    [InlineData("DELETE FROM event WHERE run = 2", "run startup_1-000002: it is missing")]
    [InlineData("DELETE FROM seal WHERE ledger = 6", "ledger entry 6: it is not sealed")]
    [InlineData("DELETE FROM ledger WHERE n = 5", "ledger entry 5: missing")]
    public void What_is_missing_is_named(string sql, string finding)
    {
        SkipWhereNotPossible();
        using var folder = untouched.Copy();
        folder.Tamper(sql);

        var (code, output) = Verify(folder);

        Assert.Equal(1, code);
        Assert.Contains(finding, output.Split('\n'));
    }

    private static void SkipWhereNotPossible()
    {
        Assert.SkipUnless(OpenSsl.IsThere, "openssl is not installed");
        Assert.SkipUnless(HasPython(), "python3 is not installed");
    }

    private static bool HasPython()
    {
        try
        {
            return Run("--version").Code == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static (int Code, string Output) Verify(TempFolder folder) =>
        Run(Path.Combine(Repository.Root, "tests", "EolSequencer.Records.Tests", "Independent", "verify_record.py"), folder.Database);

    private static (int Code, string Output) Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("python3", ["-I", "-B", .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = Encoding.UTF8 };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, (output + errors.Result).TrimEnd());
    }
}
