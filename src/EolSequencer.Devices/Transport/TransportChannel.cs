using System.Runtime.CompilerServices;
using EolSequencer.Devices.Waiting;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>
/// The tester's side of one ISO-TP address on a CAN port: sends what the state machines of the codec say and arms their
/// timers. One message goes out at a time. A group's address is for sending only; its members answer at their own.
/// </summary>
internal sealed class TransportChannel : ICanListener, IDisposable
{
    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly TransportTimers _timers;
    private readonly TransportAddress _address;
    private readonly MessageSender _sender;
    private readonly MessageReceiver _receiver;
    private readonly ITransportListener? _listener;
    private readonly IDisposable? _listening;
    private readonly FrameSender _requests;
    private readonly FrameSender _replies;
    private readonly Signal<bool> _flow = new();
    private readonly ITimer _flowLimit;
    private readonly ITimer _nextFrame;
    private TxStep? _flowStep;
    private int _repliesMade;

    /// <param name="listener">Who is told of what arrives; null for a group's address.</param>
    public TransportChannel(TransportLink link, TransportAddress address, ITransportListener? listener)
    {
        var (port, time) = link;
        (_port, _time, _address, _timers, _listener) = (port, time, address, link.Timers, listener);
        _sender = new MessageSender(address, link.Options);
        _receiver = new MessageReceiver(address, link.Options);
        _requests = new FrameSender(port, time, _timers.Confirmation);
        _replies = new FrameSender(port, time, _timers.Confirmation);
        _flowLimit = time.CreateTimer(static flow => ((Signal<bool>)flow!).TrySet(false), _flow, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _nextFrame = time.CreateTimer(static channel => ((TransportChannel)channel!).NextFrameIsLate(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        if (listener is not null) _listening = port.Listen(address.Receive.Id, this, Repeats.All);
    }

    /// <summary>Whether frames can pass at this moment.</summary>
    public bool IsUp => _port.State == LinkState.Up;

    /// <summary>True between the first frame of a message that arrives and its end.</summary>
    public bool IsReceiving => _receiver.IsReceiving;

    /// <summary>Sends a message; ends when its last frame is confirmed, or when it is clear that it will not go out.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up; what was on the wire stays there.</exception>
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<SendOutcome> SendAsync(ReadOnlyMemory<byte> message, CancellationToken cancel)
    {
        var (stamp, link) = (_time.GetTimestamp(), LinkState.Up);
        var step = _sender.Begin(message);
        try
        {
            while (step.Ended is null)
            {
                if (step.Frame is { } frame)
                {
                    var sent = await _requests.SendAsync(frame, cancel);
                    (stamp, link) = sent is { } how ? (how.Stamp, how.Link) : (_time.GetTimestamp(), LinkState.Up);
                    step = sent is { IsConfirmed: true } ? _sender.Confirm() : _sender.Fail();
                }
                else
                {
                    step = step.Timer == TxTimer.Gap ? await GapAsync(step.Gap, stamp, cancel) : await FlowControlAsync(cancel);
                }
            }
        }
        finally
        {
            _sender.Reset();
        }

        return new SendOutcome(step.Ended.Value, stamp, link, step.Detail);
    }

    public void Received(in CanFrame frame, long stamp)
    {
        _listener!.Heard(stamp);
        if (_address.IsFlowControl(frame))
        {
            var step = _sender.Accept(frame);
            if (step.Timer == TxTimer.Keep && step.Ended is null && step.Frame is null) return;
            _flowStep = step;
            _flow.TrySet(true);
        }
        else
        {
            Apply(_receiver.Accept(frame), stamp);
        }
    }

    public void Silenced(CanId id, long lastStamp)
    {
        // Diagnostic frames have no cycle.
    }

    public void Dispose()
    {
        _listening?.Dispose();
        _requests.Dispose();
        _replies.Dispose();
        _flowLimit.Dispose();
        _nextFrame.Dispose();
    }

    private async ValueTask<TxStep> GapAsync(TimeSpan gap, long since, CancellationToken cancel)
    {
        await Pause.ForAsync(gap - _time.GetElapsedTime(since), _time, cancel);
        return _sender.Next();
    }

    /// <summary>What the newest flow control brings when several came in one go, or the end of N_Bs.</summary>
    private async ValueTask<TxStep> FlowControlAsync(CancellationToken cancel)
    {
        _flowStep = null;
        _flow.Reset();
        _flowLimit.Change(_timers.FlowControl, Timeout.InfiniteTimeSpan);
        CancellationTokenRegistration giveUp = default;
        try
        {
            await _flow.WaitAsync(cancel, out giveUp);
        }
        finally
        {
            giveUp.Dispose();
            Stop(_flowLimit);
        }

        return _flowStep ?? _sender.Expire();
    }

    private void NextFrameIsLate() => Apply(_receiver.Expire(), _time.GetTimestamp());

    private void Apply(in RxStep step, long stamp)
    {
        if (step.Timer == RxTimer.Stop) Stop(_nextFrame);
        else if (step.Reply is null && step.Timer == RxTimer.NextFrame) _nextFrame.Change(_timers.NextFrame, Timeout.InfiniteTimeSpan);
        if (step.Reply is { } reply) Reply(reply);
        if (step.Aborted is { } result) _listener!.Aborted(result, step.Detail ?? "", stamp);
        else if (step.Reply is not null && !IsReceiving) _listener!.Aborted(TransportResult.BufferOverflow, step.Detail ?? "", stamp);
        if (!step.Message.IsEmpty) _listener!.Received(step.Message, stamp);
    }

    // Nobody awaits a flow control; "async void" lets a broken assumption reach the run's thread all the same.
    private async void Reply(CanFrame reply)
    {
        Stop(_nextFrame);
        var number = ++_repliesMade;
        var sent = await _replies.SendAsync(reply, CancellationToken.None);
        if (number != _repliesMade) return; // another message has begun meanwhile
        if (sent is not { IsConfirmed: true }) Apply(_receiver.ReplyFailed(), _time.GetTimestamp());
        else if (IsReceiving) _nextFrame.Change(_timers.NextFrame, Timeout.InfiniteTimeSpan);
    }

    private static void Stop(ITimer timer) => timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
}
