using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Writing;

/// <summary>Reported means stored: what the journal has taken must be there for everybody, at once and for good.</summary>
public sealed class DurableJournalTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    public void A_run_reads_back_as_it_was_told()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var events = SampleRun.Of(journal.Run);

        TempFolder.Append(journal, events);

        var read = _folder.OpenToRead().Runs.Load(journal.Run);
        Assert.NotNull(read);
        Assert.True(Structural.AreEqual(events, read.Events));
    }

    [Fact]
    public void Each_event_can_be_read_as_soon_as_it_is_appended()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var reader = _folder.OpenToRead().Runs;

        foreach (var next in SampleRun.Of(journal.Run))
        {
            journal.Append(next);
            Assert.Equal(next.N, reader.Load(journal.Run)!.Events[^1].N);
        }
    }

    [Fact]
    public void Runs_are_numbered_by_station_and_go_on_after_a_restart()
    {
        using (var first = _folder.Take("startup_1"))
        using (var second = _folder.Take("roller_2"))
        {
            Assert.Equal("startup_1-000001", TempFolder.WriteRun(first));
            Assert.Equal("startup_1-000002", TempFolder.WriteRun(first));
            Assert.Equal("roller_2-000001", TempFolder.WriteRun(second));
        }

        using var again = _folder.Take("startup_1");
        Assert.Equal("startup_1-000003", TempFolder.WriteRun(again));
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void A_run_that_was_broken_off_goes_on_behind_its_last_event()
    {
        string run;
        using (var station = _folder.Take())
        {
            var journal = station.BeginRun();
            run = journal.Run;
            TempFolder.Append(journal, SampleRun.Of(run).Take(6));
        }

        using var again = _folder.Take();
        var rest = again.ContinueRun(run);
        Assert.Equal(6, rest.Count);
        TempFolder.Append(rest, SampleRun.Of(run).Skip(6));

        var report = _folder.OpenToRead().Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Empty(report.Unfinished);
    }

    [Fact]
    public void Only_an_unfinished_run_of_the_same_station_can_go_on()
    {
        using var station = _folder.Take();
        var ended = TempFolder.WriteRun(station);

        Assert.Throws<ArgumentException>(() => station.ContinueRun(ended));
        Assert.Throws<ArgumentException>(() => station.ContinueRun("startup_1-000099"));
        Assert.Throws<ArgumentException>(() => station.ContinueRun("roller_2-000001"));
        Assert.Throws<ArgumentException>(() => station.ContinueRun("startup_1"));
    }

    [Fact]
    public void A_gap_a_second_beginning_and_anything_behind_the_end_are_broken_assumptions()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var events = SampleRun.Of(journal.Run);

        Assert.Throws<InvalidOperationException>(() => journal.Append(events[1] with { N = 1 }));
        journal.Append(events[0]);
        Assert.Throws<InvalidOperationException>(() => journal.Append(events[0] with { N = 2 }));
        Assert.Throws<InvalidOperationException>(() => journal.Append(events[2]));
        TempFolder.Append(journal, events.Skip(1));
        Assert.Throws<InvalidOperationException>(() => journal.Append(events[1] with { N = events.Length + 1 }));
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void A_run_under_the_id_of_another_is_a_broken_assumption()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();

        Assert.Throws<InvalidOperationException>(() => journal.Append(SampleRun.Of("startup_1-000077")[0]));
        Assert.Empty(_folder.OpenToRead().Runs.List(new()));
    }

    [Fact]
    public void A_file_text_that_does_not_have_its_hash_is_a_broken_assumption()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var begun = (RunBegun)SampleRun.Of(journal.Run)[0];

        Assert.Throws<ArgumentException>(() => journal.Append(begun with { Sources = [new("plant.yaml", new string('0', 64), "plant: x\n")] }));
        Assert.Equal(0, journal.Count);
    }

    [Fact]
    public void The_text_of_a_file_is_kept_once()
    {
        _folder.WriteRuns(3);

        Assert.Equal(2, _folder.Ask<int>("SELECT count(*) FROM source")[0]);
    }

    [Fact]
    public void A_file_with_a_byte_order_mark_is_kept_with_it_and_read_without()
    {
        var bytes = (byte[])[0xEF, 0xBB, 0xBF, .. "plant: é\n"u8];
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        using var station = _folder.Take();
        var journal = station.BeginRun();

        journal.Append((RunBegun)SampleRun.Of(journal.Run)[0] with { Sources = [new("plant.yaml", hash, "plant: é\n")] });

        Assert.Equal(bytes, _folder.Ask<byte[]>("SELECT bytes FROM source")[0]);
        Assert.Equal("plant: é\n", ((RunBegun)_folder.OpenToRead().Runs.Load(journal.Run)!.Events[0]).Sources[0].Text);
    }

    [Fact]
    public void The_tables_say_what_the_events_say()
    {
        using var station = _folder.Take();
        var run = TempFolder.WriteRun(station, steps: 4, counted: Verdict.Fail);
        var reader = _folder.OpenToRead().Runs;

        var summary = reader.Find(run)!;
        Assert.Equal(Verdict.Fail, summary.End!.Numbers.Verdict);
        Assert.Equal(new RollUp(0, 4, 0, 1, 0), summary.End.Numbers);
        Assert.Equal(SampleRun.Wall, summary.Begun);
        Assert.Equal(SampleRun.Wall + summary.End.Took, summary.End.At);
        Assert.Equal(TimeSpan.Zero, summary.Begun.Offset);
        var steps = reader.Steps(run);
        Assert.Equal(5, steps.Length);
        Assert.Equal((1.81, "1.81", "A", 1.6, 2.4), (steps[0].Value, steps[0].ValueText, steps[0].Unit, steps[0].Low, steps[0].High));
        Assert.Equal((Verdict.Pass, Verdict.None, 2), (steps[4].Measured, steps[4].Counted, steps[4].Attempt));
        Assert.Equal(["", "takes"], _folder.Ask<string>("SELECT of FROM criterion ORDER BY k"));
    }

    [Fact]
    public void An_event_that_could_not_be_kept_leaves_nothing_and_can_be_appended_again()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var events = SampleRun.Of(journal.Run);
        _folder.Tamper("CREATE TRIGGER in_the_way BEFORE INSERT ON ledger BEGIN SELECT RAISE(ABORT, 'the ledger is shut'); END");

        var fault = Assert.Throws<JournalFault>(() => journal.Append(events[0]));

        Assert.Contains("the ledger is shut", fault.Message);
        Assert.Equal([0, 0, 0], _folder.Ask<int>("SELECT count(*) FROM event UNION ALL SELECT count(*) FROM run UNION ALL SELECT count(*) FROM source"));
        Assert.Throws<InvalidOperationException>(() => journal.Append(events[1]));
        _folder.Ask<int>("DROP TRIGGER in_the_way");
        TempFolder.Append(journal, events);
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void No_run_begins_without_room_on_the_disk()
    {
        using var station = _folder.Take(options: RecordOptions.Usual with { FreeBytes = _ => 3 * 1048576 });
        var journal = station.BeginRun();

        var fault = Assert.Throws<JournalFault>(() => journal.Append(SampleRun.Of(journal.Run)[0]));

        Assert.Contains("3 MiB are free", fault.Message);
        Assert.Empty(_folder.OpenToRead().Runs.List(new()));
    }

    [Fact]
    public void A_writer_that_another_one_keeps_waiting_too_long_says_so()
    {
        using var station = _folder.Take(options: RecordOptions.Usual with { LongestWait = TimeSpan.FromMilliseconds(50) });
        var journal = station.BeginRun();
        using var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_folder.Database};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
        {
            var fault = Assert.Throws<JournalFault>(() => journal.Append(SampleRun.Of(journal.Run)[0]));
            Assert.Contains("another program", fault.Message);
        }

        TempFolder.Append(journal, SampleRun.Of(journal.Run));
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    public void Dispose() => _folder.Dispose();
}
