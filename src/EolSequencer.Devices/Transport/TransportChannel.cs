using EolSequencer.Model.Waiting;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>
/// The tester's side of one ISO-TP address on a CAN port: sends what the state machines of the codec say and arms their
/// timers. One message goes out at a time.
/// </summary>
internal sealed class TransportChannel : ICanListener, IDisposable
{
    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly TransportTimers _timers;
    private readonly TransportAddress _address;
    private readonly MessageSender _sender;
    private readonly MessageReceiver _receiver;
    private readonly ITransportListener _listener;
    private readonly IDisposable _listening;
    private readonly ITimer _nextFrame;
    private TaskCompletionSource<TxStep>? _step;

    public TransportChannel(
        ICanPort port, TimeProvider time, TransportAddress address, TransportOptions options, TransportTimers timers, ITransportListener listener)
    {
        (_port, _time, _address, _timers, _listener) = (port, time, address, timers, listener);
        _sender = new MessageSender(address, options);
        _receiver = new MessageReceiver(address, options);
        _nextFrame = time.CreateTimer(_ => Apply(_receiver.Expire(), time.GetTimestamp()), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _listening = port.Listen(address.Receive.Id, this, Repeats.All);
    }

    /// <summary>Sends a message; ends when its last frame is confirmed, or when it is clear that it will not go out.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up; what was on the wire stays there.</exception>
    public async ValueTask<SendOutcome> SendAsync(ReadOnlyMemory<byte> message, CancellationToken cancel)
    {
        var stamp = _time.GetTimestamp();
        var link = LinkState.Up;
        var step = _sender.Begin(message);
        try
        {
            while (step.Ended is null)
            {
                if (step.Frame is { } frame)
                {
                    var sent = await SendFrameAsync(frame, cancel);
                    (stamp, link) = (sent.Stamp, sent.Link);
                    step = sent.IsConfirmed ? _sender.Confirm() : _sender.Fail();
                }
                else
                {
                    step = step.Timer == TxTimer.Gap ? await GapAsync(step.Gap, stamp, cancel) : await FlowControlAsync(cancel);
                }
            }
        }
        catch (OperationCanceledException)
        {
            GiveUp();
            throw;
        }

        return new SendOutcome(step.Ended.Value, stamp, link, step.Detail);
    }

    /// <summary>Drops what has been received in part, so that nothing old completes later.</summary>
    public void Reset()
    {
        _receiver.Reset();
        _nextFrame.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    public void Received(in CanFrame frame, long stamp)
    {
        if (_address.IsFlowControl(frame))
        {
            var step = _sender.Accept(frame);
            if (step.Timer != TxTimer.Keep || step.Ended is not null || step.Frame is not null) _step?.TrySetResult(step);
            return;
        }

        var received = _receiver.Accept(frame);
        if (received.Timer != RxTimer.Keep) _listener.Began(stamp);
        Apply(received, stamp);
    }

    public void Silenced(CanId id, long lastStamp)
    {
        // Diagnostic frames have no cycle.
    }

    public void Dispose()
    {
        _listening.Dispose();
        _nextFrame.Dispose();
    }

    private async ValueTask<Transmission> SendFrameAsync(CanFrame frame, CancellationToken cancel)
    {
        using var limit = new CancellationTokenSource(_timers.Confirmation, _time);
        using var outer = cancel.UnsafeRegister(static source => ((CancellationTokenSource)source!).Cancel(), limit);
        try
        {
            return await _port.SendAsync(frame, limit.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Transmission(LinkState.Down, _time.GetTimestamp());
        }
    }

    private async ValueTask<TxStep> GapAsync(TimeSpan gap, long since, CancellationToken cancel)
    {
        var left = gap - _time.GetElapsedTime(since);
        if (left > TimeSpan.Zero) await Pause.ForAsync(left, _time, cancel);
        return _sender.Next();
    }

    private async ValueTask<TxStep> FlowControlAsync(CancellationToken cancel)
    {
        var step = new TaskCompletionSource<TxStep>(TaskCreationOptions.RunContinuationsAsynchronously);
        _step = step;
        using var limit = _time.CreateTimer(_ => step.TrySetResult(_sender.Expire()), null, _timers.FlowControl, Timeout.InfiniteTimeSpan);
        using var outer = cancel.Register(() => step.TrySetCanceled(cancel));
        try
        {
            return await step.Task;
        }
        finally
        {
            _step = null;
        }
    }

    /// <summary>Ends a transfer that nobody waits for any more, so that the next one may begin.</summary>
    private void GiveUp()
    {
        while (_sender.IsSending)
        {
            var step = _sender.Fail();
            if (step.Ended is null) step = _sender.Expire();
            if (step.Ended is null) _sender.Next();
        }
    }

    private void Apply(RxStep step, long stamp)
    {
        if (step.Timer is RxTimer.NextFrame) _nextFrame.Change(_timers.NextFrame, Timeout.InfiniteTimeSpan);
        else if (step.Timer is RxTimer.Stop) _nextFrame.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        if (step.Reply is { } reply) _ = ReplyAsync(reply);
        if (step.Aborted is { } result) _listener.Aborted(result, step.Detail ?? result.ToString(), stamp);
        if (!step.Message.IsEmpty) _listener.Received(step.Message, stamp);
    }

    private async Task ReplyAsync(CanFrame reply)
    {
        var sent = await SendFrameAsync(reply, CancellationToken.None);
        if (!sent.IsConfirmed) Apply(_receiver.ReplyFailed(), sent.Stamp);
        else if (_receiver.IsReceiving) _nextFrame.Change(_timers.NextFrame, Timeout.InfiniteTimeSpan);
    }
}
