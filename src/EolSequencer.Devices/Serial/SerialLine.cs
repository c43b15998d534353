namespace EolSequencer.Devices.Serial;

/// <summary>
/// A serial port of this computer. What its threads find is posted to the thread that opened the line; when the port is gone, it is
/// looked for every <see cref="Retry"/> by its name and opened as a new one.
/// </summary>
public sealed class SerialLine : ISerialLine, IPortOwner
{
    /// <summary>Time between two attempts to open a port that is gone.</summary>
    public static readonly TimeSpan Retry = TimeSpan.FromMilliseconds(500);

    private readonly SerialForm _form;
    private readonly TimeProvider _time;
    private readonly SynchronizationContext _context;
    private readonly ISerialListener _listener;
    private readonly List<Sending> _underWay = [];
    private readonly ITimer _again;
    private OpenPort? _port;
    private bool _isClosed;

    private SerialLine(SerialForm form, TimeProvider time, SynchronizationContext context, ISerialListener listener)
    {
        (_form, _time, _context, _listener) = (form, time, context, listener);
        _again = time.CreateTimer(static line => ((SerialLine)line!).TryAgain(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <inheritdoc/>
    public bool IsUp => _port is not null;

    /// <summary>Opens a port. Call it on a thread with a synchronization context: that of the run.</summary>
    /// <returns>The line, or why it did not open, for people.</returns>
    public static async ValueTask<(SerialLine? Line, string? Fault)> OpenAsync(SerialForm form, TimeProvider time, ISerialListener listener, CancellationToken cancel)
    {
        var context = SynchronizationContext.Current ?? throw new InvalidOperationException("a serial line is opened on the run's thread");
        var line = new SerialLine(form, time, context, listener);
        var opened = new TaskCompletionSource<Exception?>();
        line.Begin(opened.SetResult);
        try
        {
            if (await opened.Task.WaitAsync(cancel) is not { } fault) return (line, null);
            await line.DisposeAsync();
            return (null, PortFault.Words(fault, form.Port));
        }
        catch (OperationCanceledException)
        {
            await line.DisposeAsync();
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask<string?> SendAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        if (_port is not { } port) return _isClosed ? "the line is closed" : $"{_form.Port} is gone";
        var sending = new Sending(bytes);
        using var giveUp = cancel.UnsafeRegister(static (state, token) => ((Sending)state!).Withdraw(token), sending);
        _underWay.Add(sending);
        port.Write(sending);
        try
        {
            return await sending.Ended;
        }
        finally
        {
            _underWay.Remove(sending);
        }
    }

    /// <summary>Closes the port; never waits for it.</summary>
    public ValueTask DisposeAsync()
    {
        if (_isClosed) return default;
        _isClosed = true;
        _again.Dispose();
        var port = _port;
        _port = null;
        port?.Abandon();
        EndAll("the line is closed");
        return default;
    }

    void IPortOwner.Read(OpenPort port, byte[] bytes, long stamp) => _context.Post(
        _ =>
        {
            if (port == _port) _listener.Received(bytes, stamp);
        },
        null);

    void IPortOwner.Written(OpenPort port, Sending sending, Exception? fault) =>
        _context.Post(_ => sending.End(fault is null ? null : PortFault.Words(fault, _form.Port)), null);

    void IPortOwner.Gone(OpenPort port, Exception fault, long stamp) => _context.Post(_ => Lose(port, fault, stamp), null);

    private void Lose(OpenPort port, Exception fault, long stamp)
    {
        if (port != _port) return;
        _port = null;
        port.Abandon();
        var words = PortFault.Words(fault, _form.Port);
        EndAll(words);
        _listener.LinkChanged(false, words, stamp);
        if (!_isClosed) _again.Change(Retry, Timeout.InfiniteTimeSpan);
    }

    private void EndAll(string why)
    {
        foreach (var sending in _underWay.ToArray()) sending.End(why);
    }

    private void TryAgain()
    {
        if (_isClosed || IsUp) return;
        Begin(fault =>
        {
            if (_isClosed) return;
            if (fault is null) _listener.LinkChanged(true, null, _time.GetTimestamp());
            else _again.Change(Retry, Timeout.InfiniteTimeSpan);
        });
    }

    /// <summary>Opening blocks, so a thread does it; the end is told on the run's thread.</summary>
    private void Begin(Action<Exception?> opened)
    {
        var thread = new Thread(() =>
        {
            try
            {
                var port = OpenPort.Open(_form, _time, this);
                _context.Post(
                    _ =>
                    {
                        if (_isClosed)
                        {
                            port.Abandon();
                        }
                        else
                        {
                            _port = port;
                            port.Begin();
                        }

                        opened(null);
                    },
                    null);
            }
            catch (Exception fault) when (PortFault.Is(fault))
            {
                _context.Post(_ => opened(fault), null);
            }
        })
        { IsBackground = true, Name = $"opens {_form.Port}" };
        thread.Start();
    }
}
