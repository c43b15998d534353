using DbUp;
using DbUp.Sqlite.Helpers;

namespace EolSequencer.Records.Sqlite;

/// <summary>The tables of a record, made and brought up to date by numbered scripts.</summary>
internal static class RecordSchema
{
    /// <summary>The number of the newest script; a record states its own as <c>user_version</c>.</summary>
    public const int Newest = 10;

    /// <summary>Marks the file as one of ours: <c>EOLR</c>.</summary>
    private const int Application = 0x454F4C52;

    /// <summary>How far a file is. It has to hold a database, if only an empty one.</summary>
    public static SchemaState StateOf(RecordConnection connection)
    {
        var application = connection.Number("PRAGMA application_id");
        var version = connection.Number("PRAGMA user_version");
        var tables = connection.Number("SELECT count(*) FROM sqlite_master");
        if (tables == 0) return SchemaState.Nothing;
        if (application != Application) return SchemaState.Foreign;
        return version switch
        {
            Newest => SchemaState.Current,
            > Newest => SchemaState.Newer,
            _ => SchemaState.Older,
        };
    }

    /// <summary>Runs the scripts that are missing; the caller has an immediate transaction open and commits it.</summary>
    public static void Upgrade(RecordConnection connection, TimeProvider time)
    {
        using var shared = new SharedConnection(connection.Connection);
        var result = DeployChanges.To.SqliteDatabase(shared)
            .WithScriptsEmbeddedInAssembly(typeof(RecordSchema).Assembly)
            .WithVariablesDisabled()
            .WithoutTransaction()
            .JournalTo(new SchemaJournal(connection.Connection, time))
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful) throw result.Error;
        connection.Set("application_id", Application);
        connection.Set("user_version", Newest);
    }
}
