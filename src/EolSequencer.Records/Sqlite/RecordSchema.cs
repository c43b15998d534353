using System.Data;
using System.Globalization;
using Dapper;
using DbUp;
using DbUp.Sqlite.Helpers;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records.Sqlite;

/// <summary>The tables of a record, made and brought up to date by numbered scripts.</summary>
internal static class RecordSchema
{
    /// <summary>The number of the newest script; a record states its own as <c>user_version</c>.</summary>
    public const int Newest = 1;

    /// <summary>Marks the file as one of ours: <c>EOLR</c>.</summary>
    private const int Application = 0x454F4C52;

    /// <summary>How far a file is. It has to hold a database, if only an empty one.</summary>
    public static SchemaState StateOf(SqliteConnection connection)
    {
        var application = connection.ExecuteScalar<int>("PRAGMA application_id");
        var version = connection.ExecuteScalar<int>("PRAGMA user_version");
        var tables = connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master");
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
    public static void Upgrade(SqliteConnection connection, TimeProvider time)
    {
        using var shared = new SharedConnection(connection);
        var result = DeployChanges.To.SqliteDatabase(shared)
            .WithScriptsEmbeddedInAssembly(typeof(RecordSchema).Assembly)
            .WithVariablesDisabled()
            .WithoutTransaction()
            .JournalTo(new SchemaJournal(connection, time))
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful) throw result.Error;
        connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA application_id = {Application}; PRAGMA user_version = {Newest}"));
    }
}
