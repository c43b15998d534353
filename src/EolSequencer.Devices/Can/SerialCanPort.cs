using EolSequencer.Devices.Serial;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.SerialCan;

namespace EolSequencer.Devices.Can;

/// <summary>
/// A CAN interface on a serial line, in the ASCII form that the serial-line CAN driver of Linux documents.
/// </summary>
/// <remarks>The stamp of a frame is the moment at which its last bytes were read: the form has no better one.</remarks>
public sealed class SerialCanPort : ICanPort, ISerialListener, IAsyncDisposable
{
    /// <summary>How long a command of the opening may wait for its answer.</summary>
    public static readonly TimeSpan AnswerLimit = TimeSpan.FromMilliseconds(500);

    /// <summary>How long nothing must come before the interface counts as quiet.</summary>
    public static readonly TimeSpan QuietTime = TimeSpan.FromMilliseconds(50);

    /// <summary>Time a command at the end may take: an interface that is gone holds nobody up.</summary>
    private static readonly TimeSpan FarewellLimit = TimeSpan.FromMilliseconds(200);

    /// <summary>Time after which a controller that is off is started again, and an interface that does not answer is asked again.</summary>
    public static readonly TimeSpan RestartPause = TimeSpan.FromMilliseconds(1000);

    private readonly TimeProvider _time;
    private readonly SerialCanForm _form;
    private readonly Action<string> _note;
    private readonly SerialCanReader _reader = new();
    private readonly FrameListeners _listeners = new();
    private readonly List<Action<LinkChange>> _watchers = [];
    private readonly SerialCanQueue _queue;
    private readonly ITimer _restart;
    private readonly CancellationTokenSource _closing = new();
    private ISerialLine? _line;
    private long _received;
    private TaskCompletionSource<bool>? _command;
    private bool _isEntering;
    private bool _isClosed;

    private SerialCanPort(TimeProvider time, SerialCanForm form, Action<string> note)
    {
        (_time, _form, _note) = (time, form, note);
        Health = new BusHealth(note);
        _queue = new SerialCanQueue(time, form.Answers, frame => _line!.SendAsync(SerialCanText.Write(frame), CancellationToken.None), Health);
        _restart = time.CreateTimer(static port => ((SerialCanPort)port!).Restart(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <inheritdoc/>
    public LinkState State { get; private set; } = LinkState.Down;

    /// <inheritdoc/>
    public bool LeavesOutRepeats => false;

    /// <summary>What has gone wrong beside the data.</summary>
    public BusHealth Health { get; }

    /// <inheritdoc/>
    public event Action<LinkChange>? LinkChanged
    {
        add => _watchers.Add(value!);
        remove => _watchers.Remove(value!);
    }

    /// <summary>Opens the line and takes part in the bus.</summary>
    /// <param name="open">Opens the serial line with this as its listener, or says why it does not open.</param>
    /// <returns>The port, or why there is none, for people.</returns>
    public static async ValueTask<(SerialCanPort? Port, string? Fault)> OpenAsync(
        Func<ISerialListener, ValueTask<(ISerialLine? Line, string? Fault)>> open, TimeProvider time, SerialCanForm form, Action<string> note, CancellationToken cancel)
    {
        var port = new SerialCanPort(time, form, note);
        var (line, fault) = await open(port);
        port._line = line;
        fault ??= await port.EnterAsync(cancel);
        if (fault is null) return (port, null);
        await port.DisposeAsync();
        return (null, fault);
    }

    /// <inheritdoc/>
    public ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        if (frame.IsFd) throw new ArgumentException("an interface on a serial line carries classical frames only", nameof(frame));
        if (cancel.IsCancellationRequested) return ValueTask.FromCanceled<Transmission>(cancel);
        if (State != LinkState.Up) return new(new Transmission(State, _time.GetTimestamp()));
        return _queue.SendAsync(frame, cancel);
    }

    /// <inheritdoc/>
    public IDisposable Listen(CanId id, ICanListener listener, Repeats repeats) => _listeners.Add(id, listener);

    void ISerialListener.Received(ReadOnlySpan<byte> bytes, long stamp)
    {
        _received += bytes.Length;
        foreach (var one in bytes)
        {
            if (!_isClosed && _reader.Take(one, out var line)) Take(line, stamp);
        }
    }

    void ISerialListener.LinkChanged(bool isUp, string? cause, long stamp)
    {
        _reader.Clear();
        _command?.TrySetResult(false);
        if (isUp)
        {
            Restart();
            return;
        }

        _note(cause ?? "the serial line is gone");
        Change(LinkState.Down, stamp);
    }

    /// <summary>Leaves the bus and closes the line; waits for nobody.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_isClosed) return;
        _isClosed = true;
        _closing.Cancel();
        _restart.Dispose();
        var wasUp = State == LinkState.Up;
        State = LinkState.Down;
        _queue.Dispose();
        Health.TellAll();
        if (_line is null) return;
        if (wasUp) await FarewellAsync(_line);
        await _line.DisposeAsync();
    }

    private async Task FarewellAsync(ISerialLine line)
    {
        try
        {
            await line.SendAsync(SerialCanText.Close, CancellationToken.None).AsTask().WaitAsync(FarewellLimit, _time);
        }
        catch (TimeoutException)
        {
            // The next program closes it before it opens it.
        }
    }

    private void Take(in SerialCanLine line, long stamp)
    {
        switch (line.Kind)
        {
            case SerialCanKind.Frame:
                if (State == LinkState.Up) _listeners.Hand(line.Frame, stamp);
                break;
            case SerialCanKind.Remote:
                Health.CountRemote();
                break;
            case SerialCanKind.Errors:
                Health.CountErrors(line.Errors);
                break;
            case SerialCanKind.State:
                TakeState(line.State, stamp);
                break;
            case SerialCanKind.Sent or SerialCanKind.Done:
                if (_command is { } done) done.TrySetResult(true);
                else _queue.Confirm(stamp);
                break;
            case SerialCanKind.Refused:
                if (_command is { } refused) refused.TrySetResult(false);
                else _queue.Refuse();
                break;
            default:
                // While it is opened, the end of what went on before still comes.
                if (!_isEntering) Health.CountGarbled(line.Text!);
                break;
        }
    }

    private void TakeState(ControllerState state, long stamp)
    {
        Health.CountState(state);
        if (_isEntering || State == LinkState.Down) return;
        if (state != ControllerState.BusOff)
        {
            Change(LinkState.Up, stamp);
            return;
        }

        Change(LinkState.BusOff, stamp);
        _restart.Change(RestartPause, Timeout.InfiniteTimeSpan);
    }

    private void Change(LinkState state, long stamp)
    {
        if (State == state || _isClosed) return;
        State = state;
        if (state != LinkState.Up) _queue.EndAll(new Transmission(state, stamp));
        var news = new LinkChange(state, stamp);
        foreach (var watcher in _watchers.ToArray()) watcher(news);
    }

    private async void Restart()
    {
        if (_isClosed || _isEntering || State == LinkState.Up || !_line!.IsUp) return;
        var fault = await EnterAsync(_closing.Token);
        if (_isClosed || fault is null) return;
        _note(fault);
        _restart.Change(RestartPause, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Leaves the bus, sets its speed and takes part in it.</summary>
    /// <returns>What the interface refused or did not answer; null when it takes part.</returns>
    private async Task<string?> EnterAsync(CancellationToken cancel)
    {
        _isEntering = true;
        try
        {
            if (await ClearAsync(cancel) is { } fault) return fault;
            if (!await AskAsync(SerialCanText.Speed(_form.Rate), cancel)) return $"the interface does not take the bus speed ({Written(SerialCanText.Speed(_form.Rate))}); is it a serial-line CAN interface, and the bit rate of the serial line right?";
            if (!await AskAsync(SerialCanText.Open, cancel)) return "the interface does not open the bus (O)";
        }
        catch (OperationCanceledException) when (_isClosed)
        {
            return "the port is closed";
        }
        finally
        {
            _isEntering = false;
            _command = null;
        }

        Change(LinkState.Up, _time.GetTimestamp());
        return null;
    }

    /// <summary>
    /// Ends what a program before left half-typed, and closes the interface, whatever it answers to that, until nothing comes any
    /// more: an answer that is left over would be taken for that of the next command.
    /// </summary>
    private async Task<string?> ClearAsync(CancellationToken cancel)
    {
        if (await _line!.SendAsync(new[] { SerialCanText.CarriageReturn, SerialCanText.CarriageReturn, (byte)'C', SerialCanText.CarriageReturn }, cancel) is { } fault) return fault;
        for (var waited = TimeSpan.Zero; waited < AnswerLimit; waited += QuietTime)
        {
            var before = _received;
            await Pause.ForAsync(QuietTime, _time, cancel);
            if (before == _received && waited > TimeSpan.Zero) break;
        }

        return null;
    }

    /// <summary>Hands over a command; true when it was done, or when the interface answers nothing.</summary>
    private async Task<bool> AskAsync(byte[] command, CancellationToken cancel)
    {
        var answer = new TaskCompletionSource<bool>();
        _command = answer;
        if (await _line!.SendAsync(command, cancel) is not null) return false;
        if (!_form.Answers) return true;
        try
        {
            return await answer.Task.WaitAsync(AnswerLimit, _time, cancel);
        }
        catch (TimeoutException)
        {
            return false;
        }
    }

    private static string Written(byte[] command) => System.Text.Encoding.ASCII.GetString(command).TrimEnd('\r');
}
