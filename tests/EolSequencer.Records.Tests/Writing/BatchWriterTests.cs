using System.Text;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Writing;

/// <summary>A day of rehearsal is written beside the simulation; it must come out as if each run had been written alone.</summary>
public sealed class BatchWriterTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    public void Runs_read_back_as_they_were_told_and_the_record_is_whole()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        var runs = Enumerable.Range(0, 20).Select(_ => Write(batch)).ToArray();

        batch.Complete();

        var record = _folder.OpenToRead();
        Assert.True(record.Verify().IsWhole);
        foreach (var run in runs) Assert.True(Structural.AreEqual(SampleRun.Of(run, RunMode.Rehearsal), record.Runs.Load(run)!.Events));
    }

    [Fact]
    public void A_batch_gives_the_bytes_that_a_durable_journal_gives()
    {
        using var station = _folder.Take();
        using (var batch = station.BeginBatch())
        {
            Write(batch);
            batch.Complete();
        }

        using var other = new TempFolder();
        using var otherStation = other.Take();
        TempFolder.Append(otherStation.BeginRun(), SampleRun.Of("startup_1-000001", RunMode.Rehearsal));

        const string Sql = "SELECT hex(hash) || hex(bytes) FROM event ORDER BY id";
        Assert.Equal(other.Ask<string>(Sql), _folder.Ask<string>(Sql));
    }

    [Fact]
    public void Runs_that_end_in_any_order_stand_in_the_ledger_in_the_order_of_their_numbers()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        var journals = Enumerable.Range(0, 6).Select(_ => batch.BeginRun()).ToArray();

        foreach (var k in (int[])[4, 1, 5, 0, 3, 2])
        {
            TempFolder.Append(journals[k], SampleRun.Of(journals[k].Run, RunMode.Rehearsal));
            journals[k].Complete();
        }

        batch.Complete();
        Assert.Equal(journals.Select(journal => journal.Run), Begun());
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void Several_threads_may_write_one_batch()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        var threads = Enumerable.Range(0, 4).Select(_ => new Thread(() =>
        {
            for (var k = 0; k < 10; k++) Write(batch);
        })).ToArray();
        foreach (var thread in threads) thread.Start();
        foreach (var thread in threads) thread.Join();

        batch.Complete();

        Assert.Equal(Enumerable.Range(1, 40).Select(n => $"startup_1-{n:000000}"), Begun());
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void A_run_that_is_given_up_leaves_nothing_and_holds_nobody_up()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        using (var givenUp = batch.BeginRun()) TempFolder.Append(givenUp, SampleRun.Of(givenUp.Run, RunMode.Rehearsal).Take(5));
        var kept = Write(batch);

        batch.Complete();

        Assert.Equal([kept], Begun());
    }

    [Fact]
    public void Rehearsals_stay_out_of_what_counts()
    {
        using var station = _folder.Take();
        using (var batch = station.BeginBatch())
        {
            Write(batch);
            batch.Complete();
        }

        var counts = TempFolder.WriteRun(station);

        var runs = _folder.OpenToRead().Runs;
        Assert.Equal([counts], runs.List(new RunFilter()).Select(run => run.Run));
        Assert.Equal([counts], _folder.Ask<string>("SELECT run FROM production_run"));
        Assert.Equal([counts], _folder.Ask<string>("SELECT DISTINCT run_id FROM production_step"));
        Assert.Equal([counts], _folder.OpenToRead().Vehicles.Of(SampleRun.Vin).Kinds.Select(kind => kind.Run.Run));
        Assert.Equal(["startup_1-000001"], _folder.OpenToRead().Vehicles.Of(SampleRun.Vin, RunMode.Rehearsal).Kinds.Select(kind => kind.Run.Run));
        Assert.Equal(2, runs.List(new RunFilter { Mode = null }).Length);
    }

    [Fact]
    public void A_run_that_counts_is_refused()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        using var journal = batch.BeginRun();

        Assert.Throws<InvalidOperationException>(() => journal.Append(SampleRun.Of(journal.Run)[0]));
    }

    [Fact]
    public void A_full_disk_is_told_to_the_next_who_appends_and_whole_runs_stay()
    {
        using var station = _folder.Take(options: RecordOptions.Usual with { MostPages = 60 });
        using var batch = station.BeginBatch();

        var fault = Assert.Throws<JournalFault>(() =>
        {
            for (var k = 0; k < 1000; k++) Write(batch);
        });

        Assert.Contains("the disk is full", fault.Message);
        Assert.Contains("the disk is full", Assert.Throws<JournalFault>(() => batch.Complete()).Message);
        var report = _folder.OpenToRead().Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Empty(report.Unfinished);
        Assert.InRange(report.Runs, 1, 100);
    }

    [Fact]
    public void A_fault_of_the_last_run_is_told_when_the_batch_ends()
    {
        using var station = _folder.Take();
        using var batch = station.BeginBatch();
        using var journal = batch.BeginRun();
        TempFolder.Append(journal, SampleRun.Of("startup_1-000099", RunMode.Rehearsal));
        try
        {
            journal.Complete();
        }
        catch (JournalFault)
        {
            // The writer may be that fast.
        }

        Assert.Contains("startup_1-000099", Assert.Throws<JournalFault>(() => batch.Complete()).Message);
    }

    public void Dispose() => _folder.Dispose();

    private static string Write(Records.Writing.BatchWriter batch)
    {
        using var journal = batch.BeginRun();
        TempFolder.Append(journal, SampleRun.Of(journal.Run, RunMode.Rehearsal));
        journal.Complete();
        return journal.Run;
    }

    private IEnumerable<string> Begun() => _folder.Ask<byte[]>("SELECT bytes FROM ledger ORDER BY n")
        .Select(bytes => Encoding.UTF8.GetString(bytes))
        .Where(text => text.Contains("\"begun\""))
        .Select(text => text.Split('"')[5]);
}
