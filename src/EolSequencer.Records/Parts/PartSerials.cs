using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Parts;

/// <summary>Reads the serials of parts.</summary>
internal static class PartSerials
{
    private const string Columns =
        """
        SELECT part_serial.vin, part, at, serial, run.run, event.step, run.begun_utc, event.bytes, part_serial.id
        FROM part_serial JOIN run ON run.id = part_serial.run JOIN event ON event.id = part_serial.id
        """;

    /// <summary>Every part that was found on a vehicle, in the order they were found.</summary>
    /// <param name="vins">All its numbers.</param>
    public static IEnumerable<PartSerial> Of(RecordConnection connection, IReadOnlyList<string> vins, RunMode mode) => vins
        .SelectMany(vin => Read(connection, $"{Columns} WHERE part_serial.vin = ? AND part_serial.mode = ? ORDER BY part_serial.id", vin, mode.Word()))
        .OrderBy(found => found.Key)
        .Select(found => found.Part with { Vin = vins[0] });

    /// <summary>Every part with a serial that was found in a run that counts, in the order they were found; vehicles as the runs have them.</summary>
    public static IEnumerable<PartSerial> With(RecordConnection connection, string part, string serial) =>
        Read(connection, $"{Columns} WHERE serial = ? AND part = ? AND part_serial.mode = 'production' ORDER BY part_serial.id", serial, part).Select(found => found.Part);

    /// <summary>Which of them are on the vehicle still: the newest of each part and place.</summary>
    public static ImmutableArray<PartSerial> Marked(IEnumerable<PartSerial> found)
    {
        var all = found.ToList();
        var newest = all.Index().GroupBy(one => (one.Item.Part, one.Item.At)).Select(part => part.Last().Index).ToHashSet();
        return [.. all.Select((one, at) => one with { Replaced = !newest.Contains(at) })];
    }

    private static List<(long Key, PartSerial Part)> Read(RecordConnection connection, string sql, string first, string second)
    {
        using var rows = new Statement(connection.Connection.Handle!, sql);
        rows.Text(1, first).Text(2, second);
        var found = new List<(long Key, PartSerial Part)>();
        while (rows.Next())
        {
            var judged = EventForm.Read(rows.Blob(7).ToArray(), NoAttachments.Only);
            found.Add((rows.Int(8), new PartSerial(rows.Text(0), rows.Text(1), rows.Text(2), rows.Text(3), rows.Text(4), rows.Text(5), UtcText.Read(rows.Text(6)).AddMicroseconds(judged.At), false)));
        }

        return found;
    }
}
