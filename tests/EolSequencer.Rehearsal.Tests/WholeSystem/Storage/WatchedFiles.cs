using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>
/// Stands between SQLite and its files: what goes to a folder that is a <see cref="SimulatedDisk"/> goes through that disk,
/// all else goes on untouched. Only opening, writing, cutting, syncing and deleting are changed; locks, shared memory and
/// reading are SQLite's own.
/// </summary>
internal static unsafe partial class WatchedFiles
{
    private static readonly ConcurrentDictionary<string, SimulatedDisk> Disks = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<nint, (SimulatedDisk Disk, string Path, nint Original)> Open = [];
    private static readonly ConcurrentDictionary<nint, nint> Changed = [];
    private static readonly FileSystem* Usual = Register();

    /// <summary>From here on a folder is a disk.</summary>
    public static void Add(SimulatedDisk disk)
    {
        if (Usual is null) throw new InvalidOperationException("SQLite has no files");
        Disks[disk.Folder] = disk;
    }

    /// <summary>From here on it is a folder as any other.</summary>
    public static void Remove(SimulatedDisk disk) => Disks.TryRemove(disk.Folder, out _);

    private static FileSystem* Register()
    {
        SQLitePCL.Batteries_V2.Init();
        var usual = Find(null);
        var watched = (FileSystem*)NativeMemory.Alloc((nuint)sizeof(FileSystem));
        *watched = *usual;
        watched->Next = null;
        watched->Name = (byte*)Marshal.StringToCoTaskMemUTF8("watched");
        watched->Open = &OpenFile;
        watched->Delete = &DeleteFile;
        if (RegisterAsUsual(watched, 1) != DiskAnswer.Ok) throw new InvalidOperationException("SQLite did not take the watched files");
        return usual;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int OpenFile(FileSystem* self, byte* name, NativeFile* file, int flags, int* given)
    {
        var answer = Usual->Open(Usual, name, file, flags, given);
        if (answer != DiskAnswer.Ok || DiskOf(name, out var path) is not { } disk) return answer;
        Open[(nint)file] = (disk, path, (nint)file->Functions);
        file->Functions = (FileFunctions*)Changed.GetOrAdd((nint)file->Functions, static original => (nint)Change((FileFunctions*)original));
        disk.Opened(path);
        return answer;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int DeleteFile(FileSystem* self, byte* name, int syncFolder)
    {
        if (DiskOf(name, out var path) is not { } disk) return Usual->Delete(Usual, name, syncFolder);
        var answer = disk.AskDelete();
        if (answer == DiskAnswer.Ok) answer = Usual->Delete(Usual, name, syncFolder);
        if (answer == DiskAnswer.Ok) disk.Deleted(path);
        return answer;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Close(NativeFile* file)
    {
        Open.TryRemove((nint)file, out var open);
        file->Functions = (FileFunctions*)open.Original;
        return file->Functions->Close(file);
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Write(NativeFile* file, byte* bytes, int count, long offset)
    {
        var (disk, path, original) = Open[(nint)file];
        var answer = disk.AskWrite(path, offset, new ReadOnlySpan<byte>(bytes, count));
        return answer == DiskAnswer.Ok ? ((FileFunctions*)original)->Write(file, bytes, count, offset) : answer;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Truncate(NativeFile* file, long length)
    {
        var (disk, path, original) = Open[(nint)file];
        var answer = disk.AskTruncate(path, length);
        return answer == DiskAnswer.Ok ? ((FileFunctions*)original)->Truncate(file, length) : answer;
    }

    // The true disk below need not be waited for: what a power loss leaves is the simulated disk's to say.
    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Sync(NativeFile* file, int flags)
    {
        var (disk, path, _) = Open[(nint)file];
        return disk.AskSync(path);
    }

    private static FileFunctions* Change(FileFunctions* original)
    {
        var changed = (FileFunctions*)NativeMemory.Alloc((nuint)sizeof(FileFunctions));
        *changed = *original;
        changed->Close = &Close;
        changed->Write = &Write;
        changed->Truncate = &Truncate;
        changed->Sync = &Sync;
        return changed;
    }

    private static SimulatedDisk? DiskOf(byte* name, out string path)
    {
        path = Marshal.PtrToStringUTF8((nint)name) ?? "";
        return Path.GetDirectoryName(path) is { } folder ? Disks.GetValueOrDefault(folder) : null;
    }

    [LibraryImport("e_sqlite3", EntryPoint = "sqlite3_vfs_find")]
    [UnmanagedCallConv(CallConvs = [typeof(CallConvCdecl)])]
    private static partial FileSystem* Find(byte* name);

    [LibraryImport("e_sqlite3", EntryPoint = "sqlite3_vfs_register")]
    [UnmanagedCallConv(CallConvs = [typeof(CallConvCdecl)])]
    private static partial int RegisterAsUsual(FileSystem* files, int isUsual);
}
