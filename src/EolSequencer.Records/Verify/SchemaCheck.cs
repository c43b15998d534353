using Dapper;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Tables, indexes and triggers are those that the scripts of this version make, so what guards the record is still in place.</summary>
internal static class SchemaCheck
{
    private static readonly Lazy<Dictionary<string, string>> Made = new(Make);

    public static void Walk(RecordConnection connection, FindingList findings)
    {
        var found = Objects(connection);
        foreach (var (name, text) in Made.Value)
        {
            if (!found.Remove(name, out var there)) findings.Add(FindingKind.Database, $"{name} is missing");
            else if (there != text) findings.Add(FindingKind.Database, $"{name} is not as this version makes it");
        }

        foreach (var name in found.Keys) findings.Add(FindingKind.Database, $"{name} is one too many");
    }

    private static Dictionary<string, string> Make()
    {
        using var made = RecordConnection.ForWriting(":memory:", durable: false, RecordOptions.Usual);
        RecordSchema.Upgrade(made, TimeProvider.System);
        return Objects(made);
    }

    /// <summary>Each object with the text that made it; quotes that the engine puts around a name it has changed are left out.</summary>
    private static Dictionary<string, string> Objects(RecordConnection connection)
    {
        var objects = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (type, name, table, text) in connection.Connection.Query<(string Type, string Name, string Table, string? Text)>("SELECT type, name, tbl_name, sql FROM sqlite_master"))
        {
            objects[$"{type} '{name}'"] = $"{table}: {text?.Replace("\"", "", StringComparison.Ordinal)}";
        }

        return objects;
    }
}
