using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Administration;

/// <summary>Who did what, when: the acts of a record as they stand in its ledger. From any thread.</summary>
/// <remarks>Trouble with the record itself is a <see cref="RecordFault"/>. Whether the ledger is as it was written, verify says.</remarks>
public sealed class ActReader
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal ActReader(RecordFiles files, RecordOptions options) => (_files, _options) = (files, options);

    /// <summary>The words for all kinds of acts.</summary>
    public static IEnumerable<string> Kinds => ActKinds.Words;

    /// <summary>Acts, newest first.</summary>
    public ImmutableArray<RecordedAct> List(ActFilter filter) => _files.Read(_options, connection =>
    {
        connection.HoldMoment();
        var names = filter.Vin is { } vin ? NamesOf(new SqliteTables(connection), vin) : [];
        return Matching(connection, filter, names).Take(filter.Most).ToImmutableArray();
    });

    private static IEnumerable<RecordedAct> Matching(RecordConnection connection, ActFilter filter, HashSet<string> names)
    {
        // Beginnings and ends of runs stand there too, many times as often: they are left without being read.
        using var entries = new Statement(connection.Connection.Handle!, "SELECT n, bytes FROM ledger WHERE n < ? AND instr(bytes, CAST('\"act\":' AS BLOB)) > 0 ORDER BY n DESC");
        entries.Int(1, filter.Before ?? long.MaxValue);
        var marks = names.Select(Encoding.UTF8.GetBytes).ToList();
        while (entries.Next())
        {
            if (marks.Count > 0 && !Holds(entries.Blob(1), marks)) continue;
            if (Read(entries.Int(0), entries.Blob(1).ToArray()) is { } act && IsWanted(act, filter, names)) yield return act;
        }
    }

    private static bool Holds(ReadOnlySpan<byte> bytes, List<byte[]> marks)
    {
        foreach (var mark in marks)
        {
            if (bytes.IndexOf(mark) >= 0) return true;
        }

        return false;
    }

    private static RecordedAct? Read(long n, byte[] bytes)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            var fields = new Fields(document.RootElement);
            return fields.TextOrNull("act"u8) is { } act
                ? new RecordedAct(n, UtcText.Read(fields.Text("wall"u8)), fields.TextOrNull("by"u8), act, fields.Required("about"u8).Clone())
                : null;
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            throw new FormatException($"entry {n} of the ledger: {fault.Message}", fault);
        }
    }

    private static bool IsWanted(RecordedAct act, ActFilter filter, HashSet<string> names) =>
        (filter.By is not { } by || act.By == by || (act.About.TryGetProperty("second", out var second) && second.ValueEquals(by)))
        && (filter.Act is null || act.Act == filter.Act)
        && (filter.From is not { } from || act.At >= from)
        && (filter.Until is not { } until || act.At < until)
        && (filter.Vin is null || Names(act.About, names));

    private static bool Names(JsonElement value, HashSet<string> names) => value.ValueKind switch
    {
        JsonValueKind.String => names.Contains(value.GetString()!),
        JsonValueKind.Array => value.EnumerateArray().Any(item => Names(item, names)),
        JsonValueKind.Object => value.EnumerateObject().Any(field => Names(field.Value, names)),
        _ => false,
    };

    /// <summary>What an act about a vehicle names: one of its numbers, a nonconformity of it, a hold that names it.</summary>
    private static HashSet<string> NamesOf(IActTables tables, string vin)
    {
        var names = new VinTrail(tables.Corrections).All(vin).ToHashSet(StringComparer.Ordinal);
        foreach (var row in tables.Nonconformities.OfVehicle(names.ToList())) names.Add(row.Id);
        foreach (var hold in tables.Holds.All().Where(hold => hold.Placed.Vins.Any(names.Contains))) names.Add(hold.Id);
        return names;
    }
}
