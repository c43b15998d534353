using EolSequencer.Records;
using EolSequencer.Rehearsal.Tests.Kit;
using Microsoft.Data.Sqlite;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Rehearsal.Tests.Simulated;

/// <summary>A finding is worth something when its seed shows it again, to the last byte of the record.</summary>
public class SameSeedTests
{
    [Fact]
    public void The_same_seed_gives_the_same_event_bytes_and_the_same_chain()
    {
        var one = Record(seed: 7, "lamp_open=tail_left");
        Assert.True(one.Count > 300);
        Assert.Equal(one, Record(seed: 7, "lamp_open=tail_left"));
        Assert.NotEqual(one, Record(seed: 8, "lamp_open=tail_left"));
    }

    /// <summary>Bytes and link of every event, as the record holds them.</summary>
    private static List<string> Record(ulong seed, params string[] faults)
    {
        var folder = Directory.CreateTempSubdirectory("eol-same");
        try
        {
            var opened = (FolderResult<DataFolder>.Opened)DataFolder.Open(folder.FullName, TimeProvider.System);
            using (var hold = ((TakenStation.Taken)opened.Folder.TakeStation("startup_1")).Station)
            {
                DemoPlant.Rehearse(DemoPlant.Orders[0], seed, hold.BeginRun(), null, faults);
            }

            Assert.True(opened.Folder.Record.Verify().IsWhole);
            using var connection = new SqliteConnection($"Data Source={Path.Combine(folder.FullName, "record.db")};Mode=ReadOnly;Pooling=False");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "SELECT hex(bytes) || ' ' || hex(hash) FROM event ORDER BY id";
            using var reader = command.ExecuteReader();
            var events = new List<string>();
            while (reader.Read()) events.Add(reader.GetString(0));
            return events;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
