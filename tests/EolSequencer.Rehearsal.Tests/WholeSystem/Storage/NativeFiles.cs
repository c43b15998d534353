using System.Runtime.InteropServices;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>An open file of SQLite: its functions come first, the rest belongs to whoever opened it.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct NativeFile
{
    public FileFunctions* Functions;
}

/// <summary>What SQLite can do with an open file, in its order.</summary>
/// <remarks>Source: SQLite documentation, C-language interface, sqlite3_io_methods version 3.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct FileFunctions
{
    public int Version;
    public delegate* unmanaged[Cdecl]<NativeFile*, int> Close;
    public nint Read;
    public delegate* unmanaged[Cdecl]<NativeFile*, byte*, int, long, int> Write;
    public delegate* unmanaged[Cdecl]<NativeFile*, long, int> Truncate;
    public delegate* unmanaged[Cdecl]<NativeFile*, int, int> Sync;
    public nint FileSize, Lock, Unlock, CheckReservedLock, FileControl, SectorSize, DeviceCharacteristics;
    public nint ShmMap, ShmLock, ShmBarrier, ShmUnmap, Fetch, Unfetch;
}

/// <summary>How SQLite reaches files at all, in its order.</summary>
/// <remarks>Source: SQLite documentation, C-language interface, sqlite3_vfs version 3.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct FileSystem
{
    public int Version;
    public int FileBytes;
    public int LongestPath;
    public FileSystem* Next;
    public byte* Name;
    public nint Data;
    public delegate* unmanaged[Cdecl]<FileSystem*, byte*, NativeFile*, int, int*, int> Open;
    public delegate* unmanaged[Cdecl]<FileSystem*, byte*, int, int> Delete;
    public nint Access, FullPathname, DlOpen, DlError, DlSym, DlClose, Randomness, Sleep, CurrentTime, GetLastError;
    public nint CurrentTimeInt64, SetSystemCall, GetSystemCall, NextSystemCall;
}
