using System.Runtime.InteropServices;

namespace EolSequencer.Simulators.Outside;

/// <summary>The calls of the C library that make a pseudo-terminal on Linux (man 3 posix_openpt, 3 termios, 2 poll).</summary>
internal static class Terminal
{
    public const int ReadWrite = 2;
    public const int NoControllingTerminal = 0x100;
    public const int CloseOnExec = 0x80000;
    public const int NonBlocking = 0x800;
    public const int SetFlags = 4;

    private const short BytesToRead = 1;

    /// <summary>Larger than any layout of struct termios.</summary>
    private const int TermiosRoom = 256;

    /// <summary>Bytes pass as they are: no echo, no line editing, no signals.</summary>
    public static void MakeRaw(int terminal)
    {
        var settings = new byte[TermiosRoom];
        if (tcgetattr(terminal, settings) != 0) return;
        cfmakeraw(settings);
        tcsetattr(terminal, 0, settings);
    }

    public static bool WaitForBytes(int file, int milliseconds)
    {
        var asked = new[] { new Poll { File = file, Wanted = BytesToRead } };
        return poll(asked, 1, milliseconds) > 0 && (asked[0].Found & BytesToRead) != 0;
    }

    [DllImport("libc", SetLastError = true)]
    public static extern int posix_openpt(int flags);

    [DllImport("libc", SetLastError = true)]
    public static extern int grantpt(int master);

    [DllImport("libc", SetLastError = true)]
    public static extern int unlockpt(int master);

    [DllImport("libc", SetLastError = true)]
    public static extern int ptsname_r(int master, byte[] name, nint room);

    [DllImport("libc", SetLastError = true, CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    public static extern int open(string path, int flags);

    [DllImport("libc", SetLastError = true)]
    public static extern int fcntl(int file, int command, int value);

    [DllImport("libc", SetLastError = true)]
    public static extern nint read(int file, byte[] buffer, nint count);

    [DllImport("libc", SetLastError = true)]
    public static extern nint write(int file, byte[] bytes, nint count);

    [DllImport("libc", SetLastError = true)]
    public static extern int close(int file);

    [DllImport("libc", SetLastError = true)]
    private static extern int poll([In, Out] Poll[] asked, nint count, int milliseconds);

    [DllImport("libc", SetLastError = true)]
    private static extern int tcgetattr(int terminal, [In, Out] byte[] settings);

    [DllImport("libc", SetLastError = true)]
    private static extern int tcsetattr(int terminal, int when, byte[] settings);

    [DllImport("libc")]
    private static extern void cfmakeraw([In, Out] byte[] settings);

    [StructLayout(LayoutKind.Sequential)]
    private struct Poll
    {
        public int File;
        public short Wanted;
        public short Found;
    }
}
