namespace EolSequencer.Records.Sqlite;

/// <summary>How the tables of a file stand to this program.</summary>
internal enum SchemaState
{
    /// <summary>An empty database.</summary>
    Nothing,

    /// <summary>A database of something else.</summary>
    Foreign,

    Older,
    Current,
    Newer,
}
