using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records;

/// <summary>How a data folder is doing.</summary>
/// <param name="FreeBytes">Room left on its disk.</param>
/// <param name="DatabaseBytes">Size of the database.</param>
/// <param name="LogBytes">Size of the write-ahead log beside it.</param>
/// <param name="Alarms">What somebody should look after, for people; empty when all is well.</param>
public sealed record FolderState(long FreeBytes, long DatabaseBytes, long LogBytes, ImmutableArray<string> Alarms)
{
    internal static FolderState Of(RecordFiles files, RecordOptions options)
    {
        var log = SizeOf(files.Log);
        var alarms = ImmutableArray.CreateBuilder<string>();
        if (new FreeSpace(files.Folder, options).Trouble() is { } space) alarms.Add(space);
        if (log > options.LargestLogBytes)
        {
            alarms.Add(string.Create(CultureInfo.InvariantCulture, $"{files.Log} has grown to {log / 1048576} MiB: a program reads the record without ever letting it go"));
        }

        if (File.Exists(files.Key) && StationKeyFile.IsOpenToOthers(files.Key))
        {
            alarms.Add($"other accounts may read the station key {files.Key}; take that right away and have a new key made");
        }

        return new FolderState(options.FreeBytes(files.Folder), SizeOf(files.Database), log, alarms.ToImmutable());
    }

    private static long SizeOf(string file) => new FileInfo(file) is { Exists: true, Length: var length } ? length : 0;
}
