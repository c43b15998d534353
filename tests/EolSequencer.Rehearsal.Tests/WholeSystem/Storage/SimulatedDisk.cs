using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>
/// The disk below a record, as far as SQLite asks it to keep something. A write is safe once its file was synced; before
/// that a power loss may take it, keep it, or keep a part of it, each write by itself, in whatever order. Making, deleting
/// and reading files never goes wrong. For one thread.
/// </summary>
internal sealed class SimulatedDisk : IDisposable
{
    private readonly Dictionary<string, DiskFile> _files = new(StringComparer.Ordinal);
    private DiskTrouble? _trouble;
    private long _room = long.MaxValue;
    private int _counted;

    /// <param name="folder">Full path of the folder with the record.</param>
    public SimulatedDisk(string folder)
    {
        Folder = folder;
        WatchedFiles.Add(this);
    }

    public string Folder { get; }

    /// <summary>True once nothing is taken any more: the power or the program is gone.</summary>
    public bool IsGone { get; private set; }

    /// <summary>True: what it confirms as synced is not.</summary>
    public bool Lies { get; init; }

    /// <summary>Operations so far.</summary>
    public int Operations { get; private set; }

    /// <summary>Operations that went wrong.</summary>
    public int Refused { get; private set; }

    /// <summary>Lets something go wrong from here on; null: all is well again.</summary>
    public void Expect(DiskTrouble? trouble)
    {
        (_trouble, _counted) = (trouble, 0);
        _room = trouble is DiskTrouble.Full full ? Used + full.Bytes : long.MaxValue;
    }

    /// <summary>Puts what is left on this disk into another folder.</summary>
    public void CopyWhatIsLeft(string folder, RandomStream chance)
    {
        foreach (var (path, file) in _files.OrderBy(entry => entry.Key, StringComparer.Ordinal))
        {
            File.WriteAllBytes(Path.Combine(folder, Path.GetFileName(path)), _trouble is DiskTrouble.PowerLoss ? file.AfterPowerLoss(chance) : file.WithAllGiven());
        }
    }

    public void Opened(string path)
    {
        if (!_files.ContainsKey(path)) _files[path] = new DiskFile(ReadShared(path));
    }

    public void Deleted(string path) => _files.Remove(path);

    public int AskDelete() => Ask(DiskAnswer.DeleteFailed);

    public int AskWrite(string path, long offset, ReadOnlySpan<byte> bytes)
    {
        var answer = Ask(DiskAnswer.WriteFailed);
        if (answer != DiskAnswer.Ok) return answer;
        var file = _files[path];
        if (Used + Math.Max(0, offset + bytes.Length - file.Length) > _room) return Refuse(DiskAnswer.Full);
        file.Write(offset, bytes);
        return DiskAnswer.Ok;
    }

    public int AskTruncate(string path, long length)
    {
        var answer = Ask(DiskAnswer.TruncateFailed);
        if (answer == DiskAnswer.Ok) _files[path].Truncate(length);
        return answer;
    }

    public int AskSync(string path)
    {
        var answer = Ask(DiskAnswer.SyncFailed);
        if (answer == DiskAnswer.Ok && !Lies) _files[path].Sync();
        return answer;
    }

    public void Dispose() => WatchedFiles.Remove(this);

    private long Used => _files.Values.Sum(file => file.Length);

    private int Ask(int fault)
    {
        Operations++;
        _counted++;
        if (_trouble is DiskTrouble.PowerLoss { Before: var power } && _counted >= power) IsGone = true;
        if (_trouble is DiskTrouble.Killed { Before: var killed } && _counted >= killed) IsGone = true;
        var fails = _trouble is DiskTrouble.Failing failing && _counted >= failing.Before && _counted < failing.Before + failing.Operations;
        return IsGone || fails ? Refuse(fault) : DiskAnswer.Ok;
    }

    private int Refuse(int fault)
    {
        Refused++;
        return fault;
    }

    private static byte[] ReadShared(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
