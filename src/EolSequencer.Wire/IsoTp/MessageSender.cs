using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>Cuts the messages for one address into frames and lets the receiver set the pace.</summary>
/// <remarks>
/// A pure state machine: the shell around it sends the frames, hands in confirmations, flow controls and expired
/// timers, and does what the returned <see cref="TxStep"/> says. Block size and separation time are taken from each
/// flow control anew (ISO 15765-2:2016, 9.6.5.6). The separation time lies between consecutive frames only; the first
/// one after a flow control leaves at once.
/// </remarks>
public sealed class MessageSender
{
    private readonly TransportAddress _address;
    private readonly TransportOptions _options;

    private State _state;
    private ReadOnlyMemory<byte> _message;
    private int _sent;
    private int _frames;
    private int _leftInBlock;
    private TimeSpan _gap;
    private int _waits;
    private FlowControl? _early;

    /// <summary>A sender to <see cref="TransportAddress.Transmit"/>.</summary>
    /// <exception cref="ArgumentException">Frames above 8 bytes are wanted on a classical bus.</exception>
    public MessageSender(TransportAddress address, TransportOptions options)
    {
        if (options.TransmitLength > CanFrame.ClassicalMax && !options.IsFd)
        {
            throw new ArgumentException($"frames of {options.TransmitLength} bytes need CAN FD", nameof(options));
        }

        (_address, _options) = (address, options);
    }

    private enum State
    {
        Idle,
        Sending,
        Awaiting,
        Pausing,
    }

    private readonly record struct FlowControl(byte Status, byte BlockSize, byte SeparationTime);

    /// <summary>True between <see cref="Begin"/> and the end of the transfer.</summary>
    public bool IsSending => _state != State.Idle;

    /// <summary>Starts a transfer.</summary>
    /// <param name="message">At least one byte; it stays unchanged until the transfer has ended.</param>
    /// <returns>
    /// The first frame; or the end with <see cref="TransportResult.Error"/> when a message to a group does not fit into
    /// a single frame.
    /// </returns>
    /// <exception cref="ArgumentException">The message is empty.</exception>
    /// <exception cref="InvalidOperationException">A transfer still runs.</exception>
    public TxStep Begin(ReadOnlyMemory<byte> message)
    {
        if (message.IsEmpty)
        {
            throw new ArgumentException("a message has at least one byte", nameof(message));
        }

        if (IsSending)
        {
            throw new InvalidOperationException("one transfer at a time: the one before has not ended");
        }

        var longest = FrameWriter.SingleMax(_address.Transmit, _options);
        var isSingle = message.Length <= longest;
        if (!isSingle && _address.IsFunctional)
        {
            return End(TransportResult.Error, $"{message.Length} bytes to a group, {longest} at most fit into the single frame that may carry them");
        }

        (_message, _sent, _frames, _leftInBlock, _waits, _early) = (message, message.Length, 0, 0, 0, null);
        return Send(isSingle
            ? FrameWriter.Single(_address.Transmit, _options, message.Span)
            : FrameWriter.First(_address.Transmit, _options, message.Span, out _sent));
    }

    /// <summary>The frame of the last step went out.</summary>
    public TxStep Confirm()
    {
        if (_state != State.Sending)
        {
            return Ignore("no frame is under way");
        }

        if (_sent == _message.Length)
        {
            return End(TransportResult.Ok);
        }

        if (_leftInBlock > 0)
        {
            return _gap > TimeSpan.Zero ? Pause() : NextFrame();
        }

        _state = State.Awaiting;
        var early = _early;
        _early = null;
        return early is { } came ? Follow(came) : new TxStep { Timer = TxTimer.FlowControl };
    }

    /// <summary>The frame of the last step did not go out within N_As, or the link went down.</summary>
    public TxStep Fail() => _state == State.Sending
        ? End(TransportResult.TimeoutA, $"{Before} did not go out")
        : Ignore("no frame is under way");

    /// <summary>The separation time is over.</summary>
    public TxStep Next() => _state == State.Pausing ? NextFrame() : Ignore("no frame is held back");

    /// <summary>N_Bs has run out.</summary>
    public TxStep Expire() => _state == State.Awaiting
        ? End(TransportResult.TimeoutBs, $"no flow control came after {Before}")
        : Ignore("no flow control is awaited");

    /// <summary>Takes a frame of the receiver; all but an awaited flow control is ignored.</summary>
    public TxStep Accept(in CanFrame frame)
    {
        if (!_address.Receive.Takes(frame))
        {
            return Ignore("a frame for another address");
        }

        var data = frame.Data.Span;
        var pci = Pci.Read(data, _address.Receive.PrefixLength);
        if (pci.Kind != PciKind.FlowControl)
        {
            return Ignore(pci.Fault ?? "no flow control");
        }

        var flow = new FlowControl(pci.Value, data[pci.HeaderLength], data[pci.HeaderLength + 1]);
        switch (_state)
        {
            case State.Awaiting:
                return Follow(flow);

            // Some links report an arrival before the confirmation of the frame it answers.
            case State.Sending when _leftInBlock == 0 && _sent < _message.Length:
                _early = flow;
                return new TxStep { Timer = TxTimer.Keep };

            default:
                return Ignore("a flow control that is not awaited");
        }
    }

    /// <summary>Forgets a running transfer.</summary>
    public void Reset() => (_state, _message) = (State.Idle, default);

    private string Before => _frames == 0
        ? _sent == _message.Length ? "the single frame" : "the first frame"
        : $"consecutive frame {_frames}";

    private TxStep Follow(FlowControl flow)
    {
        switch ((FlowStatus)flow.Status)
        {
            case FlowStatus.Continue:
                _waits = 0;
                _gap = SeparationTime.Decode(flow.SeparationTime);
                _leftInBlock = flow.BlockSize == 0 ? int.MaxValue : flow.BlockSize;
                return NextFrame();

            case FlowStatus.Wait when _waits < _options.MaxWaits:
                _waits++;
                return new TxStep { Timer = TxTimer.FlowControl };

            case FlowStatus.Wait:
                return End(TransportResult.Error, $"the receiver asked for patience more than {_options.MaxWaits} times in a row");

            case FlowStatus.Overflow:
                return End(TransportResult.BufferOverflow, $"the receiver has no room for {_message.Length} bytes");

            default:
                return End(TransportResult.InvalidFlowStatus, $"the flow control has the reserved status {flow.Status}");
        }
    }

    private TxStep NextFrame()
    {
        _frames++;
        _leftInBlock--;
        var frame = FrameWriter.Consecutive(_address.Transmit, _options, _frames, _message.Span[_sent..], out var used);
        _sent += used;
        return Send(frame);
    }

    private TxStep Send(CanFrame frame)
    {
        _state = State.Sending;
        return new TxStep { Frame = frame, Timer = TxTimer.Stop };
    }

    private TxStep Pause()
    {
        _state = State.Pausing;
        return new TxStep { Timer = TxTimer.Gap, Gap = _gap };
    }

    private TxStep End(TransportResult result, string? detail = null)
    {
        Reset();
        return new TxStep { Ended = result, Timer = TxTimer.Stop, Detail = detail };
    }

    private static TxStep Ignore(string? why) => new() { Timer = TxTimer.Keep, Detail = why };
}
