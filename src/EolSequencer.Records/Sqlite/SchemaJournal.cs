using System.Data;
using Dapper;
using DbUp.Engine;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Sqlite;

/// <summary>Which scripts have run: a table as strict as the others, with time as UTC text.</summary>
internal sealed class SchemaJournal(IDbConnection connection, TimeProvider time) : IJournal
{
    public string[] GetExecutedScripts() => IsThere() ? [.. connection.Query<string>("SELECT script FROM schema_script ORDER BY script")] : [];

    public void StoreExecutedScript(SqlScript script, Func<IDbCommand> dbCommandFactory) => connection.Execute(
        "INSERT INTO schema_script (script, applied_utc) VALUES (@Name, @Applied)",
        new { script.Name, Applied = UtcText.Of(time.GetUtcNow()) });

    public void EnsureTableExistsAndIsLatestVersion(Func<IDbCommand> dbCommandFactory) =>
        connection.Execute("CREATE TABLE IF NOT EXISTS schema_script (script TEXT PRIMARY KEY, applied_utc TEXT NOT NULL) STRICT");

    private bool IsThere() => connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_master WHERE name = 'schema_script'") > 0;
}
