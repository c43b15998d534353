using System.Globalization;
using System.Text;
using EolSequencer.Records.Tests.Samples;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Tests.Verify;

/// <summary>
/// No flipped bit of a record goes unseen: after each, the record cannot be read, or is not whole, or says in every table what it said
/// before (room that no content lies in, counters of the database engine). <c>EOL_BITS=all</c> walks every bit of the file.
/// </summary>
public sealed class EveryBitTests : IDisposable
{
    private const int Fewest = 2_000;

    private readonly TempFolder _folder = new();

    [Fact]
    public void Every_flipped_bit_is_seen_or_changes_nothing()
    {
        WriteSmallRecord();
        var file = File.ReadAllBytes(_folder.Database);
        var original = Content(_folder.Database);
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
        var (seen, meaningless, escaped) = (0, 0, new List<string>());
        foreach (var bit in Bits(file.Length * 8L))
        {
            Write(file, bit, flipped: true);
            if (!SaysWhole(_folder.Path)) seen++;
            else if (Content(_folder.Database) == original) meaningless++;
            else escaped.Add($"byte {bit / 8} bit {bit % 8}");
            Write(file, bit, flipped: false);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{file.Length} bytes: {seen} flips seen, {meaningless} without meaning, {escaped.Count} escaped");
        Assert.True(escaped.Count == 0, string.Join('\n', escaped.Take(40)));
        Assert.True(seen > Fewest / 4, "hardly any flip was seen: the file must be mostly empty");
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>Pages as small as the engine has them, so that as much of the file as possible is content.</summary>
    private void WriteSmallRecord()
    {
        using (var station = _folder.Take()) TempFolder.WriteRun(station, counted: Model.Judging.Verdict.Fail);
        using var connection = new SqliteConnection($"Data Source={_folder.Database};Pooling=False");
        connection.Open();
        foreach (var pragma in (string[])["PRAGMA journal_mode = DELETE", "PRAGMA page_size = 512", "VACUUM"])
        {
            using var command = connection.CreateCommand();
            command.CommandText = pragma;
            command.ExecuteScalar();
        }
    }

    private static IEnumerable<long> Bits(long count)
    {
        if (Environment.GetEnvironmentVariable("EOL_BITS") == "all")
        {
            for (var bit = 0L; bit < count; bit++) yield return bit;
            yield break;
        }

        // A step that has no factor in common with the number of bits, so that every region has its share.
        var step = count / Fewest | 1;
        for (var bit = 0L; bit < count; bit += step) yield return bit;
    }

    private void Write(byte[] file, long bit, bool flipped)
    {
        var value = (byte)(file[bit / 8] ^ (flipped ? 1 << (int)(bit % 8) : 0));
        using var stream = new FileStream(_folder.Database, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        stream.Position = bit / 8;
        stream.WriteByte(value);
    }

    private static bool SaysWhole(string path)
    {
        try
        {
            return RecordFolder.Open(path) is FolderResult<RecordFolder>.Opened { Folder: var record } && record.Verify().IsWhole;
        }
        catch (RecordFault)
        {
            return false;
        }
    }

    /// <summary>Everything that can be read: what made the tables, and each of them. When a script of the schema was run is read by nobody.</summary>
    private static string Content(string database)
    {
        using var connection = new SqliteConnection($"Data Source={database};Pooling=False;Mode=ReadOnly");
        connection.Open();
        var text = new StringBuilder().AppendJoin("", Rows(connection, "SELECT type, name, tbl_name, sql FROM sqlite_master"));
        foreach (var table in Rows(connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name <> 'schema_script' ORDER BY name"))
        {
            text.Append(table);
            foreach (var row in Rows(connection, $"SELECT * FROM {table.Trim()}")) text.Append(row);
        }

        return text.ToString();
    }

    private static IEnumerable<string> Rows(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            yield return string.Join('|', Enumerable.Range(0, reader.FieldCount).Select(at => reader.GetValue(at) switch
            {
                byte[] bytes => Convert.ToHexString(bytes),
                var value => Convert.ToString(value, CultureInfo.InvariantCulture),
            })) + "\n";
        }
    }
}
