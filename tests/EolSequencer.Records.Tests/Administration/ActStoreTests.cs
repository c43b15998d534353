using EolSequencer.Records.People;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Administration;

/// <summary>An act is decided on what holds when it is kept, whoever else writes, and is kept whole or not at all.</summary>
public sealed class ActStoreTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    public void A_record_of_the_first_version_is_brought_up_and_takes_acts()
    {
        using (var station = _folder.Take())
        {
            var journal = station.BeginRun();
            TempFolder.Append(journal, SampleRun.WithoutConditions(journal.Run));
        }

        MakeFirstVersion();
        Assert.Equal(FolderTrouble.Older, Assert.IsType<FolderResult<RecordFolder>.Refused>(RecordFolder.Open(_folder.Path)).Trouble);

        Crew.Done(_folder.Open().Administer(_ => { }).People.AddFirst("adm", "Ada Invented", Crew.Secret));

        Assert.True(_folder.OpenToRead().Verify().IsWhole);
        Assert.Equal("adm", Assert.Single(_folder.OpenToRead().People.List()).Badge);
        Assert.Single(_folder.OpenToRead().Runs.List(new()));
    }

    [Fact]
    public void Acts_of_many_at_once_all_stand_in_one_ledger()
    {
        var office = _folder.Open().Administer(_ => { });
        Crew.Done(office.People.AddFirst("adm", "Ada Invented", Crew.Secret));
        var by = Crew.Done(office.SignIn.With("adm", Crew.Secret));

        Parallel.For(0, 12, new ParallelOptions { MaxDegreeOfParallelism = 4 }, k =>
            Crew.Done(_folder.Open().Administer(_ => { }).People.Add(by, $"p{k}", "P Invented", [Role.Operator], Crew.Secret)));

        Assert.Equal(13, _folder.OpenToRead().People.List().Length);
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void Of_many_who_want_the_same_badge_one_gets_it()
    {
        var office = _folder.Open().Administer(_ => { });
        var made = 0;
        Parallel.For(0, 6, new ParallelOptions { MaxDegreeOfParallelism = 3 }, k =>
        {
            if (office.People.AddFirst($"adm{k}", "Ada Invented", Crew.Secret).IsDone) Interlocked.Increment(ref made);
        });

        Assert.Equal(1, made);
        Assert.Single(_folder.OpenToRead().People.List());
    }

    [Fact]
    public void A_full_disk_leaves_the_record_as_it_was()
    {
        var office = _folder.Open().Administer(_ => { });
        Crew.Done(office.People.AddFirst("adm", "Ada Invented", Crew.Secret));
        var by = Crew.Done(office.SignIn.With("adm", Crew.Secret));
        var pages = _folder.Ask<int>("PRAGMA page_count")[0];
        var full = _folder.Open(RecordOptions.Usual with { MostPages = pages }).Administer(_ => { });

        var added = 0;
        var fault = Assert.Throws<RecordFault>(() =>
        {
            for (; added < 200; added++) Crew.Done(full.People.SetRoles(by, "adm", [Role.Administrator, Role.Quality]));
        });

        Assert.Contains("the disk is full", fault.Message);
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
        Assert.Equal(added, _folder.Ask<int>("SELECT count(*) FROM ledger WHERE CAST(bytes AS TEXT) LIKE '%person-roles%'")[0]);
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>Takes away what every script after the first made.</summary>
    private void MakeFirstVersion()
    {
        var tables = _folder.Ask<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name IN ('person', 'person_secret', 'nonconformity', 'hold', 'vehicle_release', 'part_serial', 'vin_correction', 'sequence_draft', 'sequence_approval')");
        foreach (var table in tables) _folder.Tamper($"DROP TABLE {table}");
        _folder.Tamper("DROP INDEX run_by_retest; DROP INDEX run_counting; ALTER TABLE run DROP COLUMN retest_of; ALTER TABLE run DROP COLUMN conditions");
        _folder.Tamper("DELETE FROM schema_script WHERE script <> '001-record.sql'; PRAGMA user_version = 1");
    }
}
