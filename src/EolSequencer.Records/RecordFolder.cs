using EolSequencer.Model.Ports;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Exporting;
using EolSequencer.Records.History;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Parts;
using EolSequencer.Records.People;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Verify;
using EolSequencer.Records.Witnessing;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace EolSequencer.Records;

/// <summary>The record of a data folder, to be read; works while stations write to it.</summary>
public sealed class RecordFolder
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal RecordFolder(RecordFiles files, RecordOptions options)
    {
        (_files, _options) = (files, options);
        Runs = new RunReader(files, options);
        Vehicles = new VehicleHistory(files, options);
        Serials = new RecordedSerials(files, options);
        Exports = new RecordExporter(files, options);
        var acts = new SqliteActReader(files, options);
        People = new PersonReader(acts);
        Nonconformities = new NonconformityReader(acts);
        Holds = new HoldReader(acts);
        Releases = new ReleaseReader(acts);
        Vins = new VinReader(acts);
        Acts = new ActReader(files, options);
        Approvals = new ApprovalReader(acts);
    }

    /// <summary>Full path.</summary>
    public string Path => _files.Folder;

    /// <summary>Runs.</summary>
    public RunReader Runs { get; }

    /// <summary>What vehicles have come to.</summary>
    public VehicleHistory Vehicles { get; }

    /// <summary>Which parts are on which vehicles, for runs that count; from any thread.</summary>
    public IPartSerials Serials { get; }

    /// <summary>What is in it, for other programs.</summary>
    public RecordExporter Exports { get; }

    /// <summary>Who is known to it.</summary>
    public PersonReader People { get; }

    /// <summary>What does not conform.</summary>
    public NonconformityReader Nonconformities { get; }

    /// <summary>Vehicles that are kept back.</summary>
    public HoldReader Holds { get; }

    /// <summary>Which vehicles may leave.</summary>
    public ReleaseReader Releases { get; }

    /// <summary>Numbers of vehicles that were wrong.</summary>
    public VinReader Vins { get; }

    /// <summary>Who did what, when.</summary>
    public ActReader Acts { get; }

    /// <summary>Which sequence texts may be used in production.</summary>
    public ApprovalReader Approvals { get; }

    /// <summary>Opens the record of a folder, or a copy of a record as a single file, also on a medium that cannot be written; makes and changes nothing.</summary>
    public static FolderResult<RecordFolder> Open(string path) => Open(path, RecordOptions.Usual);

    internal static FolderResult<RecordFolder> Open(string path, RecordOptions options)
    {
        if (File.Exists(path)) return OpenCopy(path, options);
        if (RecordFiles.Of<RecordFolder>(path, out var noFolder) is not { } files) return noFolder!;
        if (!File.Exists(files.Database)) return new FolderResult<RecordFolder>.Refused(FolderTrouble.NotThere, $"there is no record in {files.Folder}; a run makes one");
        return Open(files, options);
    }

    private static FolderResult<RecordFolder> OpenCopy(string file, RecordOptions options)
    {
        var files = RecordFiles.OfCopy(file);
        try
        {
            if (files.HoldsDatabase) return Open(files, options);
            return new FolderResult<RecordFolder>.Refused(FolderTrouble.NotAFolder, $"{files.Database} is a file and holds no record; a data folder or a copy of a record is wanted");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new FolderResult<RecordFolder>.Refused(FolderTrouble.Damaged, $"{files.Database} cannot be read: {fault.Message}");
        }
    }

    private static FolderResult<RecordFolder> Open(RecordFiles files, RecordOptions options)
    {
        try
        {
            using var connection = RecordConnection.ForReading(files.Database, options);
            var state = RecordSchema.StateOf(connection);
            if (files.RefuseState<RecordFolder>(state) is { } refused) return refused;
            return state is SchemaState.Current
                ? new FolderResult<RecordFolder>.Opened(new RecordFolder(files, options))
                : new FolderResult<RecordFolder>.Refused(FolderTrouble.Older, $"{files.Database} was made by an earlier version; the next run brings it up to date");
        }
        catch (SqliteException fault) when (fault.SqliteErrorCode == raw.SQLITE_CANTOPEN && files.AsOnReadOnlyMedium() is { } fixedFiles)
        {
            return Open(fixedFiles, options);
        }
        catch (SqliteException fault)
        {
            return files.Refuse<RecordFolder>(fault);
        }
    }

    /// <summary>Where the ledger stands.</summary>
    public LedgerHead Head() => Read(LedgerReader.Head);

    /// <summary>Walks everything: ledger, seals, chains, sources, series and the tables made from the events.</summary>
    /// <param name="witness">What was kept elsewhere of the ledger, to be compared with it; null: nothing was.</param>
    public VerifyReport Verify(LedgerWitness? witness = null) => Read(connection => new RecordVerifier(connection).VerifyAll(witness));

    /// <summary>Hashes of the ledger as it is now, to be kept elsewhere; null when it has no entry.</summary>
    /// <param name="every">Entries of a range, from 1.</param>
    public LedgerWitness? Witness(long every) => Read(connection => WitnessMaker.Of(connection, every));

    /// <summary>Opens the record to read many runs in full; ledger, seals and keys are walked first.</summary>
    public CheckedRuns CheckRuns() => CheckedRuns.Open(_files, _options);

    /// <summary>Walks what a crash can have touched: the last entries of the ledger and the runs that have not ended.</summary>
    public VerifyReport VerifyTail() => Read(connection => new RecordVerifier(connection).VerifyTail());

    /// <summary>Copies the record as it is at this moment into a file that must not be there yet, and checks the copy.</summary>
    public BackupResult BackUp(string file) => Backup.Make(_files, _options, file);

    /// <summary>How much room the record takes and has.</summary>
    public FolderState State() => FolderState.Of(_files, _options);

    private T Read<T>(Func<RecordConnection, T> read) => _files.Read(_options, read);
}
