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
    /// <param name="vin">As the runs have it.</param>
    public static List<PartSerial> Of(RecordConnection connection, string vin, RunMode mode) =>
        Read(connection, $"{Columns} WHERE part_serial.vin = ? AND part_serial.mode = ? ORDER BY part_serial.id", vin, RunBegunForm.WordOf(mode));

    /// <summary>Every part with a serial that was found in a run that counts, in the order they were found.</summary>
    public static List<PartSerial> With(RecordConnection connection, string part, string serial) =>
        Read(connection, $"{Columns} WHERE serial = ? AND part = ? AND part_serial.mode = 'production' ORDER BY part_serial.id", serial, part);

    /// <summary>Which of them are on the vehicle still: the newest of each part and place.</summary>
    public static ImmutableArray<PartSerial> Marked(IEnumerable<PartSerial> found)
    {
        var all = found.ToList();
        var newest = all.Index().GroupBy(one => (one.Item.Part, one.Item.At)).Select(part => part.Last().Index).ToHashSet();
        return [.. all.Select((one, at) => one with { Replaced = !newest.Contains(at) })];
    }

    private static List<PartSerial> Read(RecordConnection connection, string sql, string first, string second)
    {
        using var rows = new Statement(connection.Connection.Handle!, sql);
        rows.Text(1, first).Text(2, second);
        var found = new List<PartSerial>();
        while (rows.Next())
        {
            var judged = EventForm.Read(rows.Blob(7).ToArray(), NoAttachments.Only);
            found.Add(new PartSerial(rows.Text(0), rows.Text(1), rows.Text(2), rows.Text(3), rows.Text(4), rows.Text(5), UtcText.Read(rows.Text(6)).AddMicroseconds(judged.At), false));
        }

        return found;
    }
}
