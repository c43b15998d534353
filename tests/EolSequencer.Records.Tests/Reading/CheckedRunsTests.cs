using EolSequencer.Model.Events;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Tests.Verify;

namespace EolSequencer.Records.Tests.Reading;

/// <summary>Many runs are read without anybody asking for a verification first, so what was touched has to show while they are read.</summary>
public sealed class CheckedRunsTests(RecordOfThreeRuns untouched) : IClassFixture<RecordOfThreeRuns>
{
    [Fact]
    public void Runs_are_read_as_they_were_written_oldest_first()
    {
        using var folder = untouched.Copy();
        var record = folder.OpenToRead();
        var runs = record.CheckRuns();
        using var reader = runs.OpenReader();

        Assert.Empty(runs.Findings);
        var ids = runs.Select(new RunFilter { Mode = null });
        Assert.Equal(["startup_1-000001", "startup_1-000002", "startup_1-000003"], ids);
        foreach (var id in ids)
        {
            var run = reader.Read(id)!;
            Assert.Null(run.Trouble);
            Assert.Equal(record.Runs.Load(id)!.Events.Select(one => one.ToString()), run.Events.Select(one => one.ToString()));
        }

        Assert.Null(reader.Read("startup_1-000004"));
    }

    [Fact]
    public void Findings_alone_leave_out_prompts_and_raw_bytes_and_nothing_that_was_found()
    {
        using var folder = untouched.Copy();
        var runs = folder.OpenToRead().CheckRuns();
        using var whole = runs.OpenReader();
        using var lean = runs.OpenReader(onlyFindings: true);

        var (all, found) = (whole.Read("startup_1-000001")!, lean.Read("startup_1-000001")!);

        Assert.Null(found.Trouble);
        Assert.Contains(all.Events, one => one is Asked or Begun);
        Assert.Equal(all.Events.Where(one => one is not (Asked or Begun)).Select(one => (one.N, one.GetType())), found.Events.Select(one => (one.N, one.GetType())));
        Assert.Equal(all.Events.OfType<Judged>().SelectMany(one => one.Criteria), found.Events.OfType<Judged>().SelectMany(one => one.Criteria));
        Assert.Equal(Values(all), Values(found));

        static IEnumerable<(long, string?)> Values(CheckedRun run) => run.Events.OfType<SeriesRecorded>().SelectMany(one => one.Points).Select(point => (point.At, point.Value));
    }

    [Theory]
    [InlineData("asked")]
    [InlineData("begun")]
    [InlineData("j")]
    public void A_changed_event_is_told_whether_it_is_wanted_or_not(string kind)
    {
        using var folder = untouched.Copy();
        var where = $"id >> 20 = 2 AND CAST(bytes AS TEXT) LIKE '%,\"{kind}\":%'";
        var bytes = folder.Ask<byte[]>($"SELECT bytes FROM event WHERE {where} ORDER BY id LIMIT 1")[0];
        bytes[^2] ^= 1;
        Assert.Equal(1, folder.Tamper($"UPDATE event SET bytes = @bytes WHERE id = (SELECT id FROM event WHERE {where} ORDER BY id LIMIT 1)", new { bytes }));

        using var reader = folder.OpenToRead().CheckRuns().OpenReader(onlyFindings: true);

        Assert.NotNull(reader.Read("startup_1-000002")!.Trouble);
        Assert.Null(reader.Read("startup_1-000001")!.Trouble);
    }

    [Theory]
    [InlineData("DELETE FROM event WHERE id = (2 << 20) + 3", "event 3 is missing")]
    [InlineData("DELETE FROM event WHERE id = (SELECT max(id) FROM event WHERE id >> 20 = 2)", "its last event is not the one in the ledger")]
    [InlineData("UPDATE event SET bytes = CAST('{}' AS BLOB) WHERE id = (2 << 20) + 2", "event 2 cannot be read")]
    public void What_is_not_as_it_was_written_is_told_with_its_place(string sql, string trouble)
    {
        using var folder = untouched.Copy();
        Assert.Equal(1, folder.Tamper(sql, new { }));

        using var reader = folder.OpenToRead().CheckRuns().OpenReader();

        Assert.StartsWith(trouble, reader.Read("startup_1-000002")!.Trouble, StringComparison.Ordinal);
    }
}
