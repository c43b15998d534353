using Microsoft.Data.Sqlite;

namespace EolSequencer.Cli.Tests.Kit;

/// <summary>Changes the bytes of a recorded step, as whoever forges a record would.</summary>
internal static class ForgedRecord
{
    /// <param name="data">The data folder.</param>
    /// <param name="change">Changes the bytes in place.</param>
    public static void Change(string data, string step, Action<byte[]> change)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(data, "record.db")};Pooling=False");
        connection.Open();
        using var read = connection.CreateCommand();
        read.CommandText = "SELECT id, bytes FROM event WHERE step = $step";
        read.Parameters.AddWithValue("$step", step);
        long id;
        byte[] bytes;
        using (var reader = read.ExecuteReader())
        {
            Assert.True(reader.Read());
            (id, bytes) = (reader.GetInt64(0), (byte[])reader[1]);
        }

        DropTriggers(connection);
        change(bytes);
        using var write = connection.CreateCommand();
        write.CommandText = "UPDATE event SET bytes = $bytes WHERE id = $id";
        write.Parameters.AddWithValue("$bytes", bytes);
        write.Parameters.AddWithValue("$id", id);
        Assert.Equal(1, write.ExecuteNonQuery());
    }

    /// <summary>Whoever forges a record takes the guards of its database away first.</summary>
    private static void DropTriggers(SqliteConnection connection)
    {
        var names = new List<string>();
        using (var list = connection.CreateCommand())
        {
            list.CommandText = "SELECT name FROM sqlite_master WHERE type = 'trigger'";
            using var reader = list.ExecuteReader();
            while (reader.Read()) names.Add(reader.GetString(0));
        }

        foreach (var name in names)
        {
            using var drop = connection.CreateCommand();
            drop.CommandText = $"DROP TRIGGER \"{name}\"";
            drop.ExecuteNonQuery();
        }
    }
}
