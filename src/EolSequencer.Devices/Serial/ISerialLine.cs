namespace EolSequencer.Devices.Serial;

/// <summary>
/// A serial port: bytes in, bytes out. It is used from one thread, on which its listener is called, too. When the port is gone
/// it opens it again by itself, by the same name, until it is closed.
/// </summary>
public interface ISerialLine : IAsyncDisposable
{
    /// <summary>Whether bytes can pass at this moment.</summary>
    bool IsUp { get; }

    /// <summary>Sends bytes behind those of earlier calls.</summary>
    /// <param name="bytes">They stay unchanged until the call ends.</param>
    /// <returns>Null when the port has taken all of them; else why not, for people, and then the line is down or goes down.</returns>
    /// <exception cref="OperationCanceledException">The caller gave up; bytes that the port had already stay sent.</exception>
    ValueTask<string?> SendAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel);
}

/// <summary>Who is told what comes out of a serial port, on the thread that uses it and never from inside a call.</summary>
public interface ISerialListener
{
    /// <summary>Bytes have come, in any portions: where a message ends is for the listener to know.</summary>
    /// <param name="bytes">Valid until this returns.</param>
    /// <param name="stamp">When they were read from the port, a timestamp of the clock that the line was given.</param>
    void Received(ReadOnlySpan<byte> bytes, long stamp);

    /// <summary>The port is gone or back. What was sent before is not sent again, and half a message will not be completed.</summary>
    /// <param name="cause">Why it is gone, for people; null when it is back.</param>
    void LinkChanged(bool isUp, string? cause, long stamp);
}
