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
        // Quoted, so that a damaged one is a text too, whatever has become of it.
        foreach (var (type, name, made) in connection.Connection.Query<(string Type, string Name, string Made)>("SELECT quote(type), quote(name), quote(tbl_name) || quote(sql) FROM sqlite_master"))
        {
            objects[$"{type.Trim('\'')} {name}"] = made.Replace("\"", "", StringComparison.Ordinal);
        }

        return objects;
    }
}
