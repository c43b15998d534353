using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Stations;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>A data folder that goes when the test ends.</summary>
internal sealed class TempFolder : IDisposable
{
    public TempFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"eol-records-{Guid.NewGuid():N}");

    public string Database => System.IO.Path.Combine(Path, "record.db");

    public string KeyFile => System.IO.Path.Combine(Path, "station-key.pem");

    public DataFolder Open(RecordOptions? options = null) =>
        Assert.IsType<FolderResult<DataFolder>.Opened>(DataFolder.Open(Path, TimeProvider.System, options ?? RecordOptions.Usual)).Folder;

    public RecordFolder OpenToRead() => Assert.IsType<FolderResult<RecordFolder>.Opened>(RecordFolder.Open(Path)).Folder;

    public StationHold Take(string station = "startup_1", RecordOptions? options = null) =>
        Assert.IsType<StationResult.Taken>(Open(options).TakeStation(station)).Station;

    /// <summary>Writes whole production runs through a durable journal and gives their ids.</summary>
    public string[] WriteRuns(int count, int steps = 4)
    {
        using var station = Take();
        return [.. Enumerable.Range(0, count).Select(_ => WriteRun(station, steps: steps))];
    }

    public static string WriteRun(StationHold station, int steps = 4, Verdict counted = Verdict.Pass, string vin = SampleRun.Vin, string kind = "startup")
    {
        var journal = station.BeginRun();
        Append(journal, SampleRun.Of(journal.Run, steps: steps, counted: counted, vin: vin, kind: kind));
        return journal.Run;
    }

    public static void Append(IRunJournal journal, IEnumerable<RunEvent> events)
    {
        foreach (var next in events) journal.Append(next);
    }

    /// <summary>Changes the record behind the program's back, as somebody with a database tool would who leaves no trace.</summary>
    public int Tamper(string sql, object? values = null)
    {
        using var connection = new SqliteConnection($"Data Source={Database};Pooling=False");
        connection.Open();
        var triggers = connection.Query<(string Name, string Text)>("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'").ToArray();
        foreach (var trigger in triggers) connection.Execute($"DROP TRIGGER {trigger.Name}");
        var changed = connection.Execute(sql, values);
        foreach (var trigger in triggers) connection.Execute(trigger.Text);
        return changed;
    }

    /// <summary>Asks the record with plain SQL.</summary>
    public T[] Ask<T>(string sql, object? values = null)
    {
        using var connection = new SqliteConnection($"Data Source={Database};Pooling=False");
        connection.Open();
        return [.. connection.Query<T>(sql, values)];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
