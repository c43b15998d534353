using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Writing;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Records;

/// <summary>
/// The data folder of a computer, open for its stations: one record and one key for all of them. Any number of processes
/// may have it open and write to it; a station belongs to one of them at a time.
/// </summary>
public sealed class DataFolder
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;
    private readonly TimeProvider _time;
    private readonly string _pem;
    private readonly long _keyId;

    private DataFolder(RecordFiles files, RecordOptions options, TimeProvider time, string pem, long keyId)
    {
        (_files, _options, _time, _pem, _keyId) = (files, options, time, pem, keyId);
        Record = new RecordFolder(files, options);
    }

    /// <summary>Full path.</summary>
    public string Path => _files.Folder;

    /// <summary>What is in it, to be read.</summary>
    public RecordFolder Record { get; }

    /// <summary>Opens a folder; makes folder, record and key where they are not there, and brings an earlier record up to date.</summary>
    public static FolderResult<DataFolder> Open(string path, TimeProvider time) => Open(path, time, RecordOptions.Usual);

    internal static FolderResult<DataFolder> Open(string path, TimeProvider time, RecordOptions options)
    {
        if (RecordFiles.Of<DataFolder>(path, out var noFolder) is not { } files) return noFolder!;
        try
        {
            Directory.CreateDirectory(files.Folder);
            return Open(files, time, options);
        }
        catch (SqliteException fault)
        {
            return files.Refuse<DataFolder>(fault);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new FolderResult<DataFolder>.Refused(FolderTrouble.NotWritable, $"the data folder {files.Folder} cannot be written: {fault.Message}");
        }
        catch (FormatException fault)
        {
            return new FolderResult<DataFolder>.Refused(FolderTrouble.Damaged, $"{files.Key} holds no station key ({fault.Message}); put the right one back, or move it away to have a new one made");
        }
    }

    /// <summary>Takes a station for this process.</summary>
    /// <param name="station">Its id: a letter, then letters, digits and _.</param>
    public StationResult TakeStation(string station) =>
        StationHold.Take(_files, station, _time, OpenWriter, new FreeSpace(_files.Folder, _options));

    /// <summary>The services that people act through.</summary>
    /// <param name="note">Told of everything that is refused, on one line and without secrets.</param>
    public RecordAdministration Administer(Action<string> note) =>
        new(new SqliteActStore(_files, _options, _time, OpenKey), _time, note);

    private RecordWriter OpenWriter(bool durable) => new(_files.Database, durable, OpenKey(), _options);

    private SealingKey OpenKey() => new(_keyId, StationKey.FromPem(_pem));

    private static FolderResult<DataFolder> Open(RecordFiles files, TimeProvider time, RecordOptions options)
    {
        using var connection = RecordConnection.ForWriting(files.Database, durable: true, options);
        if (files.RefuseState<DataFolder>(RecordSchema.StateOf(connection)) is { } refused) return refused;

        connection.Begin();
        try
        {
            // Another process may have made or upgraded it while this one waited for its turn.
            var setup = new FolderSetup(connection, files, time);
            if (files.RefuseState<DataFolder>(setup.Upgrade()) is { } tooLate) return tooLate;
            var pem = StationKeyFile.ReadOrMake(files.Key);
            var keyId = setup.Register(pem);
            connection.Commit();
            return new FolderResult<DataFolder>.Opened(new DataFolder(files, options, time, pem, keyId));
        }
        finally
        {
            connection.Rollback();
        }
    }
}
