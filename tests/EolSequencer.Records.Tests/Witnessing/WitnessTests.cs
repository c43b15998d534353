using CsCheck;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Tests.Verify;
using EolSequencer.Records.Verify;
using EolSequencer.Records.Witnessing;

namespace EolSequencer.Records.Tests.Witnessing;

/// <summary>Whoever has the folder and its key can make a ledger that is whole in itself: hashes kept elsewhere must show it.</summary>
public sealed class WitnessTests(RecordOfThreeRuns untouched) : IClassFixture<RecordOfThreeRuns>
{
    /// <summary>Takes the last run out of a copy, ledger entries 7 to 10 with it, so that what is left is whole.</summary>
    private const string CutOff =
        """
        DELETE FROM event WHERE run = 3; DELETE FROM series WHERE run = 3; DELETE FROM criterion WHERE id >> 20 = 3; DELETE FROM run WHERE id = 3;
        DELETE FROM nonconformity; DELETE FROM seal WHERE ledger > 6; DELETE FROM ledger WHERE n > 6
        """;

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(1000)]
    public void A_ledger_that_has_only_grown_is_the_one_that_was_seen(int every)
    {
        using var folder = untouched.Copy();
        var kept = Keep(folder, every);
        folder.WriteRuns(1);

        var report = folder.OpenToRead().Verify(kept);

        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Equal((10, 12), (kept.UpTo, report.Head.Count));
    }

    [Fact]
    public void Ranges_follow_each_other_and_begin_with_the_first_entry_alone()
    {
        using var folder = untouched.Copy();

        Assert.Equal([(1, 1), (2, 4), (5, 8), (9, 10)], folder.OpenToRead().Witness(4)!.Lines.Select(line => (line.From, line.To)));
    }

    [Fact]
    public void A_cut_off_end_is_told()
    {
        using var folder = untouched.Copy();
        var kept = Keep(folder, 2);
        folder.Tamper(CutOff);

        Assert.True(folder.OpenToRead().Verify().IsWhole);
        Assert.Equal(["the end of the ledger is cut off: the witness saw entry 10, the ledger ends at entry 6"], Told(folder, kept));
    }

    [Fact]
    public void A_ledger_that_was_rewritten_with_the_folders_own_key_is_told()
    {
        using var folder = untouched.Copy();
        var kept = Keep(folder, 2);
        folder.Tamper(CutOff);
        using (var station = folder.Take()) for (var run = 0; run < 3; run++) TempFolder.WriteRun(station, counted: Verdict.Pass);

        Assert.True(folder.OpenToRead().Verify().IsWhole);
        Assert.Equal(["the ledger was rewritten: up to entry 6 it is as the witness saw it, but not up to entry 8"], Told(folder, kept));
    }

    [Fact]
    public void A_witness_of_another_folder_is_told()
    {
        using var folder = untouched.Copy();
        using var other = new TempFolder();
        other.WriteRuns(1);

        Assert.Equal(["the witness is one of another data folder, or the ledger was written anew from its first entry"], Told(folder, Keep(other, 2)));
    }

    [Fact]
    public void A_fingerprint_on_paper_is_a_witness()
    {
        using var folder = untouched.Copy();
        var paper = folder.OpenToRead().Head().Fingerprint;

        Assert.Empty(Told(folder, WitnessText.Parse($"# written down on a Friday\r\n\r\n  {paper.ToLowerInvariant()}  # by hand", out _)!));
        var wrong = paper[..^1] + (paper[^1] == '0' ? '1' : '0');
        Assert.Equal(["the ledger was rewritten at entry 10 or before it, or the witness is one of another data folder"], Told(folder, WitnessText.Parse(wrong, out _)!));
    }

    [Fact]
    public void A_copy_as_one_file_is_verified_without_the_folder_and_its_key()
    {
        using var folder = new TempFolder();
        folder.WriteRuns(2);
        var kept = Keep(folder, 2);
        using var archive = new TempFolder();
        var file = Path.Combine(archive.Path, "2026 50%.db");
        Assert.IsType<BackupResult.Made>(folder.OpenToRead().BackUp(file));

        Assert.True(Assert.IsType<FolderResult<RecordFolder>.Opened>(RecordFolder.Open(file)).Folder.Verify(kept).IsWhole);
        Assert.Equal([file], Directory.GetFileSystemEntries(archive.Path));
    }

    [Fact]
    public void A_medium_that_cannot_be_written_is_verified()
    {
        using var folder = untouched.Copy();
        File.Delete(folder.Database + "-wal");
        File.Delete(folder.Database + "-shm");
        Directory.CreateDirectory(folder.Database + "-shm"); // The engine cannot have its file here, as on a read-only medium.

        var report = folder.OpenToRead().Verify(Keep(folder, 2));

        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Equal(3, report.Runs);
    }

    [Fact]
    public void What_is_printed_is_read_again() => Gen.Select(Gen.Long[1, 1_000_000_000_000], Gen.Byte.Array[32]).Array[1, 30].Sample(entries =>
    {
        var text = new List<WitnessLine>();
        foreach (var (length, hash) in entries)
        {
            var from = text.Count == 0 ? 1 : text[^1].To + 1;
            text.Add(new WitnessLine(from, from + length - 1, Convert.ToHexStringLower(hash)));
        }

        Assert.Equal(text, WitnessText.Parse(string.Join('\n', text.Select(WitnessText.Of)), out _)!.Lines);
    });

    [Theory]
    [InlineData("", "no line of a witness")]
    [InlineData("# nothing\n", "no line of a witness")]
    [InlineData("7", "line 1: '7' is no line")]
    [InlineData("1..2 xyz", "is no line")]
    [InlineData("0 0123456789abcdef0123456789abcdef", "is no line")]
    [InlineData("99999999999999999999 0123456789abcdef0123456789abcdef", "is no line")]
    [InlineData("3 0123456789abcdef0123456789abcde", "31 hex digits")]
    [InlineData("3 0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef0", "65 hex digits")]
    [InlineData("3 0123456789abcdef0123456789abcdef\n3 0123456789abcdef0123456789abcdef", "line 2: entry 3 comes after entry 3")]
    [InlineData("4..3 0123456789abcdef0123456789abcdef", "before it begins at 4")]
    [InlineData("\u001b[2J", "'\\u001B[2J' is no line")]
    public void What_is_no_witness_is_refused_with_its_line(string text, string mentions)
    {
        Assert.Null(WitnessText.Parse(text, out var fault));
        Assert.Contains(mentions, fault, StringComparison.Ordinal);
    }

    /// <summary>A witness as it comes back from where it was kept.</summary>
    private static LedgerWitness Keep(TempFolder folder, long every) =>
        WitnessText.Parse(string.Join('\n', folder.OpenToRead().Witness(every)!.Lines.Select(WitnessText.Of)), out _)!;

    private static IEnumerable<string> Told(TempFolder folder, LedgerWitness witness)
    {
        var report = folder.OpenToRead().Verify(witness);
        Assert.All(report.Findings, finding => Assert.Equal(FindingKind.Witness, finding.Kind));
        return report.Findings.Select(finding => finding.ToString());
    }
}
