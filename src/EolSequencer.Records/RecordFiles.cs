using EolSequencer.Records.Sqlite;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records;

/// <summary>Where things stand in a data folder, and how trouble with them is named.</summary>
/// <param name="Folder">Full path of the folder.</param>
internal sealed record RecordFiles(string Folder)
{
    private const string Unchanging = "?immutable=1";

    public string Database { get; private init; } = Path.Combine(Folder, "record.db");

    /// <summary>The write-ahead log beside the database.</summary>
    public string Log => Database + "-wal";

    /// <summary>The private half of the station key.</summary>
    public string Key => Path.Combine(Folder, "station-key.pem");

    /// <summary>Holds a lock file for each station in use.</summary>
    public string Stations => Path.Combine(Folder, "stations");

    /// <summary>The files of a folder that may be there or not; what cannot be a folder is refused.</summary>
    public static RecordFiles? Of<T>(string path, out FolderResult<T>.Refused? refused)
    {
        refused = null;
        if (path.Length == 0 || path.Contains('\0'))
        {
            refused = new FolderResult<T>.Refused(FolderTrouble.NotAFolder, $"'{path.Replace("\0", "\\0", StringComparison.Ordinal)}' is no path of a data folder");
            return null;
        }

        var files = new RecordFiles(Path.GetFullPath(path));
        if (File.Exists(files.Folder)) refused = new FolderResult<T>.Refused(FolderTrouble.NotAFolder, $"{files.Folder} is a file; a data folder is wanted");
        return refused is null ? files : null;
    }

    /// <summary>Reads the record on a connection of its own, which is closed again; trouble is a <see cref="RecordFault"/>.</summary>
    public T Read<T>(RecordOptions options, Func<RecordConnection, T> read) => RecordFault.Guard(this, () =>
    {
        using var connection = RecordConnection.ForReading(Database, options);
        return read(connection);
    });

    /// <summary>The files of a copy of a record, which is this one file.</summary>
    public static RecordFiles OfCopy(string file) => new(Path.GetDirectoryName(Path.GetFullPath(file))!) { Database = Path.GetFullPath(file) };

    /// <summary>Whether it begins as a database does, damaged or not.</summary>
    /// <remarks>Source: SQLite file format, 1.3.1 Magic Header String.</remarks>
    public bool HoldsDatabase
    {
        get
        {
            Span<byte> found = stackalloc byte[16];
            using var file = new FileStream(Database, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            return file.ReadAtLeast(found, found.Length, throwOnEndOfStream: false) == found.Length && found.SequenceEqual("SQLite format 3\0"u8);
        }
    }

    /// <summary>
    /// The same for a medium that cannot be written: the engine then does without the files beside the database, in which it agrees with
    /// writers. Null when it is so already, or when a write-ahead log is there, which it would not read.
    /// </summary>
    /// <remarks>Source: the SQLite manual, "Uniform Resource Identifiers", parameter immutable.</remarks>
    public RecordFiles? AsOnReadOnlyMedium() =>
        Database.EndsWith(Unchanging, StringComparison.Ordinal) || !File.Exists(Database) || File.Exists(Log)
            ? null
            : this with { Database = $"file:{Uri.EscapeDataString(Database).Replace("%2F", "/", StringComparison.Ordinal)}{Unchanging}" };

    public FolderResult<T>.Refused Refuse<T>(SqliteException fault) => new(TroubleOf(fault), RecordTrouble.Describe(fault, Database));

    public FolderResult<T>.Refused? RefuseState<T>(SchemaState state) => state switch
    {
        SchemaState.Foreign => new(FolderTrouble.Foreign, $"{Database} is a database of something else; name another folder"),
        SchemaState.Newer => new(FolderTrouble.Newer, $"{Database} was made by a later version of this program; use that one"),
        _ => null,
    };

    private static FolderTrouble TroubleOf(SqliteException fault) => fault.SqliteErrorCode switch
    {
        raw.SQLITE_BUSY or raw.SQLITE_LOCKED => FolderTrouble.Busy,
        raw.SQLITE_CORRUPT or raw.SQLITE_NOTADB => FolderTrouble.Damaged,
        _ => FolderTrouble.NotWritable,
    };
}
