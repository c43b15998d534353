using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Verify;

namespace EolSequencer.Records.Tests.Verify;

/// <summary>Years later somebody asks whether this is what was found on the vehicle: whatever was touched since has to show.</summary>
public sealed class VerifyTests : IClassFixture<RecordOfThreeRuns>
{
    private readonly RecordOfThreeRuns _untouched;

    public VerifyTests(RecordOfThreeRuns untouched) => _untouched = untouched;

    [Fact]
    public void An_untouched_record_is_whole()
    {
        using var folder = _untouched.Copy();

        var report = folder.OpenToRead().Verify();

        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Equal((3, 3 * SampleRun.Of("startup_1-000001").Length), (report.Runs, report.Events));
        Assert.Equal(2 + 3 * 2 + 2, report.Head.Count); // the failed step is a nonconformity, which the run after it closes
        Assert.Empty(report.Unfinished);
    }

    [Fact]
    public void One_changed_bit_anywhere_is_found() => AnyPlace.Sample(
        place =>
        {
            var (table, column, row, at, bit) = place;
            using var folder = _untouched.Copy();
            var bytes = folder.Ask<byte[]>($"SELECT {column} FROM {table} ORDER BY rowid");
            var changed = bytes[row % bytes.Length];
            changed[at % changed.Length] ^= (byte)(1 << bit);
            Assert.Equal(1, folder.Tamper($"UPDATE {table} SET {column} = @changed WHERE rowid = (SELECT rowid FROM {table} ORDER BY rowid LIMIT 1 OFFSET @skip)", new { changed, skip = row % bytes.Length }));

            Assert.False(folder.OpenToRead().Verify().IsWhole, $"{table}.{column} row {row % bytes.Length} byte {at % changed.Length} bit {bit}");
        },
        iter: 120,
        threads: 1);

    [Fact]
    public void One_changed_bit_of_a_series_is_found_unless_its_points_stay_the_same() => Gen.Select(Gen.Int[0, 9999], Gen.Int[0, 7]).Sample(
        (at, bit) =>
        {
            using var folder = _untouched.Copy();
            var changed = folder.Ask<byte[]>("SELECT block FROM series ORDER BY id")[1];
            changed[at % changed.Length] ^= (byte)(1 << bit);
            folder.Tamper("UPDATE series SET block = @changed WHERE id = (SELECT id FROM series ORDER BY id LIMIT 1 OFFSET 1)", new { changed });

            var report = folder.OpenToRead().Verify();

            // Brotli has bits that no content hangs on (RFC 7932, padding at the end of a meta-block).
            if (report.IsWhole) Assert.Equal(Points(_untouched), Points(folder));
            else Assert.Equal(FindingKind.Series, Assert.Single(report.Findings).Kind);
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void A_changed_event_is_named() =>
        Found("UPDATE event SET bytes = CAST(replace(CAST(bytes AS TEXT), '1.82', '1.92') AS BLOB) WHERE run = 2 AND n = 7", FindingKind.Event, "startup_1-000002", 7, "changed");

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public void A_missing_event_is_named(int n) =>
        Found($"DELETE FROM event WHERE run = 2 AND n = {n}", FindingKind.Event, "startup_1-000002", n, "missing");

    [Fact]
    public void Missing_last_events_are_found() =>
        Found("DELETE FROM event WHERE run = 2 AND n >= 10", FindingKind.Run, "startup_1-000002", null, "it has 9 events, the ledger says");

    [Fact]
    public void Two_events_that_changed_places_are_found() => Found(
        "UPDATE event SET id = -1 WHERE run = 2 AND n = 6; UPDATE event SET id = (2 << 20) + 6 WHERE run = 2 AND n = 7; UPDATE event SET id = (2 << 20) + 7 WHERE id = -1",
        FindingKind.Event, "startup_1-000002", 6, "event 7");

    [Fact]
    public void An_added_event_is_found() => Found(
        "INSERT INTO event (id, hash, bytes) SELECT id + 100, hash, bytes FROM event WHERE run = 2 AND n = 4",
        FindingKind.Event, "startup_1-000002", 104, "stands behind the end");

    [Fact]
    public void An_event_replaced_together_with_every_link_behind_it_is_found()
    {
        using var folder = _untouched.Copy();
        var forged = new ForgedRun(folder, "startup_1-000002", events => events[6] is Judged judged
            ? [.. events.Take(6), judged with { Measured = Verdict.Pass, Counted = Verdict.Fail }, .. events.Skip(7)]
            : throw new InvalidOperationException("event 7 is no judged step"));
        forged.Write();

        Assert.Contains(folder.OpenToRead().Verify().Findings, finding => finding is { Kind: FindingKind.Run, Run: "startup_1-000002" } && finding.Text.Contains("last event is not the one in the ledger"));
    }

    [Fact]
    public void A_missing_run_is_found() => Found(
        "DELETE FROM event WHERE run = 2; DELETE FROM series WHERE run = 2; DELETE FROM criterion WHERE id >> 20 = 2; DELETE FROM run WHERE id = 2",
        FindingKind.Run, "startup_1-000002", null, "it is missing");

    [Fact]
    public void Events_without_their_run_are_found() =>
        Found("DELETE FROM run WHERE id = 2", FindingKind.Event, null, null, "run row 2, which is not there");

    [Fact]
    public void A_run_that_the_ledger_does_not_know_is_found() => Found(
        """
        INSERT INTO run (id, run, plant, station, number, station_kind, vin, order_id, vehicle_type, sequence, revision, mode, partial, planned, begun_utc)
          SELECT 9, 'startup_1-000009', plant, station, 9, station_kind, vin, order_id, vehicle_type, sequence, revision, mode, partial, planned, begun_utc FROM run WHERE id = 2;
        INSERT INTO event (id, hash, bytes) SELECT (9 << 20) + n, hash, bytes FROM event WHERE run = 2
        """,
        FindingKind.Run, "startup_1-000009", null, "the ledger does not know it");

    [Fact]
    public void A_missing_entry_of_the_ledger_is_found() =>
        Found("DELETE FROM ledger WHERE n = 5", FindingKind.Ledger, null, 5, "missing");

    [Fact]
    public void A_run_without_its_seal_is_named() =>
        Found("DELETE FROM seal WHERE ledger = 6", FindingKind.Seal, null, 6, "run startup_1-000002 is not sealed");

    [Fact]
    public void A_seal_of_another_entry_does_not_fit() => Found(
        "UPDATE seal SET signature = (SELECT signature FROM seal WHERE ledger = 4) WHERE ledger = 6",
        FindingKind.Seal, null, 6, "run startup_1-000002 is not sealed");

    [Fact]
    public void A_seal_without_its_key_is_named() =>
        Found("UPDATE seal SET key = 9 WHERE ledger = 6", FindingKind.Seal, null, 6, "does not know the key");

    [Fact]
    public void A_key_that_nobody_made_in_the_ledger_is_found()
    {
        using var folder = _untouched.Copy();
        using var other = Records.Chain.StationKey.Make();
        var link = folder.Ask<byte[]>("SELECT hash FROM ledger WHERE n = 6")[0];
        folder.Tamper(
            "INSERT INTO station_key (id, public) VALUES (2, @Public); UPDATE seal SET key = 2, signature = @Signature WHERE ledger = 6",
            new { other.Public, Signature = other.Seal(link) });

        Assert.Equal(FindingKind.Key, Assert.Single(folder.OpenToRead().Verify().Findings).Kind);
    }

    [Fact]
    public void A_cut_off_end_of_the_ledger_shows_in_its_head_alone()
    {
        using var folder = _untouched.Copy();
        var before = folder.OpenToRead().Head();
        folder.Tamper("DELETE FROM event WHERE run = 3; DELETE FROM series WHERE run = 3; DELETE FROM criterion WHERE id >> 20 = 3; DELETE FROM run WHERE id = 3; DELETE FROM nonconformity; DELETE FROM seal WHERE ledger > 6; DELETE FROM ledger WHERE n > 6");

        var report = folder.OpenToRead().Verify();

        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.NotEqual(before, report.Head);
        Assert.NotEqual(before.Fingerprint, report.Head.Fingerprint);
    }

    [Theory]
    [InlineData("UPDATE run SET verdict = 'pass', fail = 0 WHERE id = 2", "verdict is 'pass', the events say 'fail'; fail is '0', the events say '1'")]
    [InlineData("UPDATE run SET mode = 'rehearsal' WHERE id = 2", "mode is 'rehearsal', the events say 'production'")]
    [InlineData("UPDATE run SET ended_utc = NULL WHERE id = 2", "ended_utc is nothing, the events say")]
    [InlineData("UPDATE run SET vin = '9Z9RR1N42TF000018' WHERE id = 2", "vin is")]
    [InlineData("UPDATE event SET value = 1.7 WHERE run = 2 AND n = 7", "value is '1.7', the events say '1.82'")]
    [InlineData("UPDATE event SET counted = 'pass' WHERE run = 2 AND n = 9", "counted is 'pass', the events say 'fail'")]
    [InlineData("UPDATE event SET step = NULL WHERE run = 2 AND n = 9", "step is nothing")]
    [InlineData("UPDATE event SET step = 'horn' WHERE run = 2 AND n = 3", "step is 'horn', the events say nothing")]
    [InlineData("UPDATE criterion SET verdict = 'fail' WHERE id >> 20 = 2 AND k = 1", "verdict is 'fail', the events say 'pass'")]
    [InlineData("DELETE FROM criterion WHERE id >> 20 = 2 AND k = 1", "criterion 2 of step cranking is missing")]
    [InlineData("INSERT INTO criterion SELECT id, 2, of, verdict, record_only, value, value_text, unit, low, high FROM criterion WHERE id >> 20 = 2 AND k = 1", "it has 3 criteria, its events give 2")]
    public void What_is_read_fast_must_say_what_the_events_say(string sql, string text) =>
        Found(sql, FindingKind.Table, "startup_1-000002", null, text);

    [Fact]
    public void A_file_text_that_is_missing_is_found() =>
        Found("DELETE FROM source WHERE rowid = 1", FindingKind.Source, "startup_1-000002", null, "is missing");

    [Fact]
    public void A_missing_series_and_one_too_many_are_found()
    {
        Found("DELETE FROM series WHERE run = 2", FindingKind.Series, "startup_1-000002", null, "its series is missing");
        Found("INSERT INTO series (id, block) SELECT id + 1, block FROM series WHERE run = 2", FindingKind.Series, "startup_1-000002", null, "it has 2 series");
    }

    [Fact]
    public void The_tail_is_walked_without_the_runs_before_it()
    {
        using var folder = _untouched.Copy();
        using (var station = folder.Take())
        {
            TempFolder.Append(station.BeginRun(), SampleRun.Of("startup_1-000004").Take(8));
        }

        folder.Tamper("UPDATE event SET bytes = CAST(replace(CAST(bytes AS TEXT), '1.82', '1.92') AS BLOB) WHERE run = 1 AND n = 7");
        var tail = folder.OpenToRead().VerifyTail();
        Assert.True(tail.IsWhole, string.Join('\n', tail.Findings));
        Assert.Equal(["startup_1-000004"], tail.Unfinished);

        folder.Tamper("UPDATE event SET bytes = CAST(replace(CAST(bytes AS TEXT), '1.82', '1.92') AS BLOB) WHERE run = 4 AND n = 7");
        Assert.Equal(("startup_1-000004", 7), Assert.Single(folder.OpenToRead().VerifyTail().Findings, finding => finding.Kind == FindingKind.Event) is var found ? (found.Run, found.Number) : default);
    }

    [Fact]
    public void An_index_that_lost_a_run_is_found()
    {
        const int PageSize = 4096;
        const byte LeafOfAnIndex = 0x0A; // SQLite file format, 1.6 B-tree pages
        using var folder = _untouched.Copy();
        var file = File.ReadAllBytes(folder.Database);
        var at = Enumerable.Range(1, file.Length / PageSize - 1)
            .Where(page => file[page * PageSize] == LeafOfAnIndex)
            .Select(page => page * PageSize + file.AsSpan(page * PageSize, PageSize).IndexOf("startup_1-000002"u8))
            .First(place => place % PageSize != PageSize - 1);
        file[at + 3] ^= 1;
        File.WriteAllBytes(folder.Database, file);

        Assert.Equal(FindingKind.Database, folder.OpenToRead().Verify().Findings[0].Kind);
    }

    /// <summary>Found by the seed 0F_KzBp4yLs2 of the test below.</summary>
    [Fact]
    public void A_run_row_that_lost_its_id_is_found()
    {
        const byte TypeOfId = 13 + 2 * 16; // SQLite file format, 2.1 Record Format: a text of 16 bytes
        using var folder = _untouched.Copy();
        var file = File.ReadAllBytes(folder.Database);
        var header = Enumerable.Range(0, file.Length - 300)
            .First(at => file[at] is > 2 and < 128 && file[at + 1] == 0 && file[at + 2] == TypeOfId && file.AsSpan(at + file[at]).StartsWith("startup_1-000002"u8));
        file[header + 2] = 0; // nothing
        File.WriteAllBytes(folder.Database, file);

        Assert.Contains(folder.OpenToRead().Verify().Findings, finding => finding is { Kind: FindingKind.Table, Text: "run row 2 has no id of a run" });
    }

    [Fact]
    public void A_damaged_file_never_reads_as_something_else() => Gen.Select(Gen.Int[0, 1 << 20], Gen.Byte[1, 255]).Sample(
        (at, change) =>
        {
            using var folder = _untouched.Copy();
            var file = File.ReadAllBytes(folder.Database);
            file[at % file.Length] ^= change;
            File.WriteAllBytes(folder.Database, file);

            if (RecordFolder.Open(folder.Path) is not FolderResult<RecordFolder>.Opened { Folder: var record } || !record.Verify().IsWhole) return;
            foreach (var run in record.Runs.List(new()))
            {
                Assert.True(Structural.AreEqual(_untouched.Folder.OpenToRead().Runs.Load(run.Run), record.Runs.Load(run.Run)), $"byte {at % file.Length}");
            }
        },
        iter: 100,
        threads: 1);

    /// <summary>Every place that is hashed or signed: table, column, row, byte, bit.</summary>
    private static Gen<(string Table, string Column, int Row, int At, int Bit)> AnyPlace =>
        from place in Gen.Int[0, 6]
        from row in Gen.Int[0, 9999]
        from at in Gen.Int[0, 9999]
        from bit in Gen.Int[0, 7]
        select place switch
        {
            0 => ("event", "bytes", row, at, bit),
            1 => ("event", "hash", row, at, bit),
            2 => ("ledger", "bytes", row, at, bit),
            3 => ("ledger", "hash", row, at, bit),
            4 => ("seal", "signature", row, at, bit),
            5 => ("source", "bytes", row, at, bit),
            _ => ("station_key", "public", row, at, bit),
        };

    private static IEnumerable<SeriesPoint> Points(TempFolder folder) =>
        folder.OpenToRead().Runs.Load("startup_1-000002")!.Events.OfType<SeriesRecorded>().Single().Points;

    private static IEnumerable<SeriesPoint> Points(RecordOfThreeRuns untouched) => Points(untouched.Folder);

    private void Found(string sql, FindingKind kind, string? run, long? number, string text)
    {
        using var folder = _untouched.Copy();
        folder.Tamper(sql);

        var report = folder.OpenToRead().Verify();

        Assert.False(report.IsWhole);
        Assert.True(
            report.Findings.Any(finding => finding.Kind == kind && finding.Run == run && (number is null || finding.Number == number) && finding.Text.Contains(text)),
            string.Join('\n', report.Findings));
    }
}
