using System.Runtime.InteropServices;

namespace EolSequencer.Simulators.Outside;

/// <summary>
/// A serial line without hardware: a Linux pseudo-terminal whose other end other programs open by the name of a link. Closing it is
/// what pulling the plug is for them.
/// </summary>
public sealed class PseudoTerminal : IDisposable
{
    private readonly int _master;
    private readonly int _slave;
    private readonly string _link;
    private readonly Thread _reader;
    private readonly Action<byte[]> _received;
    private volatile bool _isClosed;

    private PseudoTerminal(int master, int slave, string link, Action<byte[]> received)
    {
        (_master, _slave, _link, _received) = (master, slave, link, received);
        _reader = new Thread(Read) { IsBackground = true, Name = $"reads {link}" };
        _reader.Start();
    }

    /// <summary>Makes a pseudo-terminal and the link that others open.</summary>
    /// <param name="link">Path of the link; a link that is there is replaced, any other file is not.</param>
    /// <param name="received">Told what others have written, on a thread of the terminal's own.</param>
    /// <param name="fault">Why there is none, for people; null when there is.</param>
    public static PseudoTerminal? Open(string link, Action<byte[]> received, out string? fault)
    {
        fault = OperatingSystem.IsLinux() ? null : "a pseudo-terminal needs Linux";
        if (fault is null && File.Exists(link) && new FileInfo(link).LinkTarget is null) fault = $"{link} is there and no link; name one that is free";
        if (fault is not null) return null;
        var master = Terminal.posix_openpt(Terminal.ReadWrite | Terminal.NoControllingTerminal | Terminal.CloseOnExec);
        var name = new byte[128];
        if (master < 0 || Terminal.grantpt(master) != 0 || Terminal.unlockpt(master) != 0 || Terminal.ptsname_r(master, name, name.Length) != 0)
        {
            fault = $"no pseudo-terminal can be made: {Marshal.GetLastPInvokeErrorMessage()}";
            return null;
        }

        // Held open, so that the terminal outlives whoever uses it.
        var device = System.Text.Encoding.ASCII.GetString(name, 0, Array.IndexOf(name, (byte)0));
        var slave = Terminal.open(device, Terminal.ReadWrite | Terminal.NoControllingTerminal | Terminal.CloseOnExec);
        Terminal.MakeRaw(slave);
        Terminal.fcntl(master, Terminal.SetFlags, Terminal.NonBlocking);
        try
        {
            File.Delete(link);
            File.CreateSymbolicLink(link, device);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            Terminal.close(slave);
            Terminal.close(master);
            fault = $"{link} cannot be made: {trouble.Message}";
            return null;
        }

        return new PseudoTerminal(master, slave, link, received);
    }

    /// <summary>Writes what others then read; what they do not take in time is lost.</summary>
    /// <returns>How many bytes were taken.</returns>
    public int Write(ReadOnlySpan<byte> bytes)
    {
        if (_isClosed) return 0;
        var taken = Terminal.write(_master, bytes.ToArray(), bytes.Length);
        return taken < 0 ? 0 : (int)taken;
    }

    /// <summary>Pulls the plug and takes the link away.</summary>
    public void Dispose()
    {
        if (_isClosed) return;
        _isClosed = true;
        if (Thread.CurrentThread != _reader) _reader.Join();
        Terminal.close(_slave);
        Terminal.close(_master);
        File.Delete(_link);
    }

    private void Read()
    {
        var buffer = new byte[4096];
        while (!_isClosed)
        {
            if (Terminal.WaitForBytes(_master, milliseconds: 20) && Terminal.read(_master, buffer, buffer.Length) is > 0 and var count) _received(buffer[..(int)count]);
        }
    }
}
