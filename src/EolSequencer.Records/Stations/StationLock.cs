using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Stations;

/// <summary>
/// A lock of the operating system on a file of the station: it goes when the process goes, however that ends. Who has it
/// stands in a second file, for the message to whoever comes second.
/// </summary>
internal sealed partial class StationLock : IDisposable
{
    private readonly FileStream _lock;
    private readonly string _holder;

    private StationLock(FileStream @lock, string holder) => (_lock, _holder) = (@lock, holder);

    /// <summary>Takes the lock, or says who has it.</summary>
    public static bool TryTake(string folder, string station, DateTimeOffset now, [NotNullWhen(true)] out StationLock? taken, [NotNullWhen(false)] out StationResult.Refused? refused)
    {
        if (!StationId().IsMatch(station)) throw new ArgumentException($"'{station}' is no id of a station", nameof(station));
        (taken, refused) = (null, null);
        var holder = Path.Combine(folder, station + ".holder");
        try
        {
            Directory.CreateDirectory(folder);
            var stream = new FileStream(Path.Combine(folder, station + ".lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            File.WriteAllText(holder, string.Create(CultureInfo.InvariantCulture, $"{Environment.ProcessId} {UtcText.Of(now)}\n"));
            taken = new StationLock(stream, holder);
            return true;
        }
        catch (IOException fault)
        {
            refused = ReadHolder(holder) is var (process, since)
                ? new StationResult.Refused($"station {station} is in use by process {process} since {since}; end that one first", process)
                : new StationResult.Refused($"station {station} cannot be taken: {fault.Message}", null);
            return false;
        }
        catch (UnauthorizedAccessException fault)
        {
            refused = new StationResult.Refused($"station {station} cannot be taken: {fault.Message}", null);
            return false;
        }
    }

    // The lock file stays: deleting it would let two processes hold locks on two files of one name.
    public void Dispose()
    {
        File.Delete(_holder);
        _lock.Dispose();
    }

    private static (int Process, string Since)? ReadHolder(string holder)
    {
        try
        {
            return File.ReadAllText(holder).Trim().Split(' ') is [var process, var since] && int.TryParse(process, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                ? (id, since)
                : null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    [GeneratedRegex("^[A-Za-z][A-Za-z0-9_]*$", RegexOptions.CultureInvariant)]
    private static partial Regex StationId();
}
