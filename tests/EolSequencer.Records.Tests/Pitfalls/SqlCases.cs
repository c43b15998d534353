using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Tests.Pitfalls;

/// <summary>Faults that others met with databases of measured values, each shown not to be ours.</summary>
public sealed class SqlCases : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    [Trait("case", "SQL-01")]
    public void Measured_values_sort_and_compare_as_numbers()
    {
        WriteValues("9", "61.5", "10.2");

        Assert.Equal(["9", "10.2", "61.5"], _folder.Ask<string>("SELECT value_text FROM production_step ORDER BY value"));
        Assert.Equal([61.5], _folder.Ask<double>("SELECT max(value) FROM production_step"));
        Assert.Equal(["61.5"], _folder.Ask<string>("SELECT value_text FROM production_step WHERE value > 20"));
    }

    [Fact]
    [Trait("case", "SQL-02")]
    public void Serial_numbers_keep_their_zeros_and_letters()
    {
        string[] serials = ["00482", "3E7", "88E4410", "90817263544536271809"];
        WriteValues(serials);

        Assert.Equal(serials, _folder.Ask<string>("SELECT value_text FROM production_step ORDER BY id"));
        Assert.Equal(serials, _folder.OpenToRead().Runs.Steps("startup_1-000001").Select(step => step.ValueText));
    }

    [Fact]
    [Trait("case", "SQL-02")]
    public void Every_column_is_of_a_strict_type()
    {
        _folder.Open();

        var tables = _folder.Ask<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
        var types = tables.SelectMany(table => _folder.Ask<string>($"SELECT type FROM pragma_table_xinfo('{table}')")).Distinct();

        Assert.Subset(new HashSet<string> { "TEXT", "INTEGER", "REAL", "BLOB" }, types.ToHashSet());
        Assert.Equal(tables.Order(), _folder.Ask<string>("SELECT name FROM pragma_table_list WHERE strict = 1 ORDER BY name"));
    }

    [Fact]
    [Trait("case", "SQL-03")]
    [Trait("case", "MSG-02")]
    public void A_reading_that_is_no_number_is_recorded_with_its_reason_and_the_rest_is_intact()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        journal.Append(SampleRun.Of(journal.Run)[0]);
        for (var n = 2; n <= 41; n++)
        {
            journal.Append(n switch
            {
                10 => SampleRun.Read(n, 1000 * n, "trip.current", null, Verdict.Error, MissingCause.NotFinite),
                20 => SampleRun.Read(n, 1000 * n, "trip.current", null, Verdict.Error, MissingCause.Overload),
                _ => SampleRun.Read(n, 1000 * n, "trip.current", $"{n}.5", Verdict.Pass),
            });
        }

        Assert.Equal([38], _folder.Ask<int>("SELECT count(value) FROM production_step"));
        Assert.Equal(["not-finite", "overload"], _folder.Ask<string>("SELECT cause FROM production_step WHERE value IS NULL ORDER BY id"));
        Assert.Equal([Enumerable.Range(2, 40).Where(n => n is not (10 or 20)).Average(n => n + 0.5)], _folder.Ask<double>("SELECT avg(value) FROM production_step"));
    }

    [Fact]
    [Trait("case", "SQL-04")]
    public void A_report_that_reads_all_the_while_delays_no_step()
    {
        using var station = _folder.Take(options: RecordOptions.Usual with { LongestWait = TimeSpan.FromMilliseconds(200) });
        var journal = station.BeginRun();
        var events = SampleRun.Of(journal.Run, steps: 50);
        journal.Append(events[0]);
        using var report = OpenReader();
        report.Execute("BEGIN DEFERRED");
        report.Query("SELECT * FROM event").AsList();

        // Each would fail after 200 ms if it had to wait for the report.
        TempFolder.Append(journal, events.Skip(1));

        Assert.Single(report.Query("SELECT * FROM event"));
    }

    [Fact]
    [Trait("case", "SQL-05")]
    public void The_log_shrinks_once_a_report_that_kept_it_has_gone()
    {
        var options = RecordOptions.Usual with { LogKeptBytes = 500_000, LargestLogBytes = 5_000_000 };
        using var station = _folder.Take(options: options);
        TempFolder.WriteRun(station);
        var record = _folder.Open(options).Record;
        using (var report = OpenReader())
        {
            report.Execute("BEGIN DEFERRED");
            report.Query("SELECT count(*) FROM event").AsList();
            WriteBatch(station, runs: 60);
            Assert.Contains("a program reads the record", Assert.Single(record.State().Alarms));
        }

        WriteBatch(station, runs: 2);

        Assert.InRange(record.State().LogBytes, 0, 500_000);
        Assert.Empty(record.State().Alarms);
    }

    [Fact]
    [Trait("case", "SQL-06")]
    public void A_backup_holds_what_still_stands_in_the_log()
    {
        using var station = _folder.Take();
        for (var k = 0; k < 10; k++) TempFolder.WriteRun(station);
        using var target = new TempFolder();
        var record = _folder.OpenToRead();

        var made = Assert.IsType<BackupResult.Made>(record.BackUp(target.Database));

        Assert.True(made.Report.IsWhole);
        Assert.Equal(record.Head(), made.Head);
        Assert.Equal(_folder.Ask<int>("SELECT count(*) FROM event"), target.Ask<int>("SELECT count(*) FROM event"));
        Assert.Contains("there already", Assert.IsType<BackupResult.Refused>(record.BackUp(target.Database)).Why);
        Assert.IsType<BackupResult.Refused>(record.BackUp(Path.Combine(target.Path, "not", "there.db")));
    }

    [Fact]
    [Trait("case", "SQL-08")]
    public void Wall_time_is_kept_as_utc_whatever_offset_it_came_with()
    {
        var here = new DateTimeOffset(2026, 3, 29, 3, 30, 0, TimeSpan.FromHours(2));
        using var station = _folder.Take();
        var journal = station.BeginRun();
        journal.Append((RunBegun)SampleRun.Of(journal.Run)[0] with { Wall = here });

        Assert.Equal(["2026-03-29T01:30:00.0000000Z"], _folder.Ask<string>("SELECT begun_utc FROM run"));
        var read = _folder.OpenToRead().Runs.Find(journal.Run)!.Begun;
        Assert.Equal((here.UtcDateTime, TimeSpan.Zero), (read.UtcDateTime, read.Offset));
    }

    [Theory]
    [Trait("case", "SQL-08")]
    [InlineData("2026-03-29 00:45:00")]
    [InlineData("2026-03-29T00:45:00.0000000")]
    [InlineData("2026-03-29T00:45:00.0000000+02:00")]
    public void A_time_that_is_not_utc_is_refused_by_table_and_reader(string text)
    {
        _folder.WriteRuns(1);

        Assert.Throws<SqliteException>(() => _folder.Tamper("UPDATE run SET begun_utc = @text", new { text }));
        Assert.Throws<FormatException>(() => UtcText.Read(text));
    }

    [Fact]
    public void Events_cannot_be_changed_or_deleted_by_a_slip()
    {
        _folder.WriteRuns(1);
        using var connection = new SqliteConnection($"Data Source={_folder.Database};Pooling=False");
        connection.Open();

        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => connection.Execute("UPDATE event SET bytes = x'00' WHERE n = 3")).Message);
        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => connection.Execute("DELETE FROM event")).Message);
        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => connection.Execute("DELETE FROM ledger")).Message);
        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => connection.Execute("UPDATE seal SET key = 2")).Message);
    }

    public void Dispose() => _folder.Dispose();

    private void WriteValues(params string[] values)
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        journal.Append(SampleRun.Of(journal.Run)[0]);
        for (var k = 0; k < values.Length; k++) journal.Append(SampleRun.Read(k + 2, 1000 * k, $"part_{k}", values[k], Verdict.Pass));
    }

    private static void WriteBatch(StationHold station, int runs)
    {
        using var batch = station.BeginBatch();
        for (var k = 0; k < runs; k++)
        {
            using var journal = batch.BeginRun();
            TempFolder.Append(journal, SampleRun.Of(journal.Run, RunMode.Rehearsal, steps: 250));
            journal.Complete();
        }

        batch.Complete();
    }

    private SqliteConnection OpenReader()
    {
        var connection = new SqliteConnection($"Data Source={_folder.Database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        return connection;
    }
}
