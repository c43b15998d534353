using System.Globalization;

namespace EolSequencer.Records;

/// <summary>Whether the disk has room for another run.</summary>
internal sealed class FreeSpace(string folder, RecordOptions options)
{
    /// <summary>What speaks against beginning a run; null when nothing does.</summary>
    public string? Trouble()
    {
        var free = options.FreeBytes(folder);
        if (free >= options.LeastFreeBytes) return null;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"cannot write records: {free / 1048576} MiB are free at {folder}, {options.LeastFreeBytes / 1048576} MiB are wanted before a run begins");
    }
}
