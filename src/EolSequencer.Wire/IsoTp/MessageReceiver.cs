using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>Puts the messages of one address together, frame by frame.</summary>
/// <remarks>
/// <para>
/// A pure state machine: the shell around it hands in frames and expired timers and does what the returned
/// <see cref="RxStep"/> says. It works in full duplex: what a <see cref="MessageSender"/> of the same address does at
/// the same time is not known here, so a message that arrives during a segmented transmission is taken.
/// </para>
/// <para>
/// Frames that nobody awaits are treated after ISO 15765-2:2016, 9.8.3: a new single or first frame ends a running
/// reception with <see cref="TransportResult.UnexpectedFrame"/> and is taken; a consecutive frame out of turn, a flow
/// control, a reserved or malformed frame and a first frame to a group are ignored and change nothing.
/// </para>
/// </remarks>
public sealed class MessageReceiver
{
    private readonly TransportAddress _address;
    private readonly TransportOptions _options;
    private readonly CanFrame _continue;
    private readonly CanFrame _wait;
    private readonly CanFrame _overflow;

    private State _state;
    private byte[] _message = [];
    private int _filled;
    private int _frameLength;
    private int _taken;
    private int _leftInBlock;
    private int _waits;

    /// <summary>A receiver for the frames of <see cref="TransportAddress.Receive"/>.</summary>
    public MessageReceiver(TransportAddress address, TransportOptions options)
    {
        (_address, _options) = (address, options);
        _continue = FrameWriter.FlowControl(address.Transmit, options, FlowStatus.Continue);
        _wait = FrameWriter.FlowControl(address.Transmit, options, FlowStatus.Wait);
        _overflow = FrameWriter.FlowControl(address.Transmit, options, FlowStatus.Overflow);
    }

    private enum State
    {
        Idle,
        Collecting,
        Holding,
    }

    /// <summary>True between a first frame and the end of its message.</summary>
    public bool IsReceiving => _state != State.Idle;

    /// <summary>
    /// Set by the owner while it cannot take more: flow controls that fall due ask for patience instead, at most
    /// <see cref="TransportOptions.MaxWaits"/> times in a row.
    /// </summary>
    public bool IsBusy { get; set; }

    /// <summary>Takes a frame.</summary>
    public RxStep Accept(in CanFrame frame)
    {
        if (!_address.Receive.Takes(frame))
        {
            return Ignore("a frame for another address");
        }

        var pci = Pci.Read(frame.Data.Span, _address.Receive.PrefixLength);
        return (pci.Kind, _state) switch
        {
            (PciKind.First, _) when _address.IsFunctional => Ignore("a first frame to a group"),
            (PciKind.Single or PciKind.First, State.Idle) => Begin(pci, frame),
            (PciKind.Single or PciKind.First, _) => Interrupt(pci, frame),
            (PciKind.Consecutive, State.Collecting) => Append(pci, frame.Data.Span),
            (PciKind.Consecutive, _) => Ignore("a consecutive frame that is not awaited"),
            (PciKind.FlowControl, _) => Ignore("a flow control"),
            _ => Ignore(pci.Fault),
        };
    }

    /// <summary>N_Cr has run out.</summary>
    /// <returns>The end of the reception; nothing when none awaits a frame.</returns>
    public RxStep Expire() => _state == State.Collecting
        ? Abort(TransportResult.TimeoutCr, $"nothing came, {Due} was due")
        : Ignore("no consecutive frame is awaited");

    /// <summary>A flow control could not be put on the bus within N_Ar, or the link went down.</summary>
    public RxStep ReplyFailed() => IsReceiving
        ? Abort(TransportResult.TimeoutA, "the flow control did not go out")
        : Ignore("no reception runs");

    /// <summary>Lets a reception that was held back go on, or asks for patience once more when still busy.</summary>
    public RxStep Resume() => _state == State.Holding ? AskForMore() : Ignore("no reception is held back");

    /// <summary>Forgets a running reception.</summary>
    public void Reset() => (_state, _message) = (State.Idle, []);

    private string Due => $"consecutive frame {_taken + 1} (number {(_taken + 1) & 0xF})";

    private RxStep Begin(in Pci pci, in CanFrame frame)
    {
        var payload = frame.Data[pci.HeaderLength..];
        if (pci.Kind == PciKind.Single)
        {
            return new RxStep { Message = payload[..(int)pci.Length], Timer = RxTimer.Stop };
        }

        if (pci.Length > _options.MaxMessage)
        {
            return new RxStep { Reply = _overflow, Timer = RxTimer.Stop, Detail = $"a message of {pci.Length} bytes, {_options.MaxMessage} at most are taken" };
        }

        _message = new byte[pci.Length];
        payload.CopyTo(_message);
        (_filled, _frameLength, _taken, _waits) = (payload.Length, frame.Data.Length, 0, 0);
        return AskForMore();
    }

    private RxStep Interrupt(in Pci pci, in CanFrame frame)
    {
        var detail = $"a new message began, {Due} was due";
        Reset();
        return Begin(pci, frame) with { Aborted = TransportResult.UnexpectedFrame, Detail = detail };
    }

    private RxStep Append(in Pci pci, ReadOnlySpan<byte> data)
    {
        var payload = data[pci.HeaderLength..];
        var left = _message.Length - _filled;
        var isLast = left <= _frameLength - pci.HeaderLength;
        if (isLast ? payload.Length < left || data.Length > _frameLength : data.Length != _frameLength)
        {
            return Ignore("a consecutive frame of another length than the first frame's");
        }

        if (pci.Value != ((_taken + 1) & 0xF))
        {
            return Abort(TransportResult.WrongNumber, $"number {pci.Value} came, {Due} was due");
        }

        var use = Math.Min(left, payload.Length);
        payload[..use].CopyTo(_message.AsSpan(_filled));
        _filled += use;
        _taken++;
        if (_filled == _message.Length)
        {
            var message = _message;
            Reset();
            return new RxStep { Message = message, Timer = RxTimer.Stop };
        }

        return --_leftInBlock == 0 ? AskForMore() : new RxStep { Timer = RxTimer.NextFrame };
    }

    private RxStep AskForMore()
    {
        if (!IsBusy)
        {
            (_state, _waits) = (State.Collecting, 0);
            _leftInBlock = _options.BlockSize == 0 ? int.MaxValue : _options.BlockSize;
            return new RxStep { Reply = _continue, Timer = RxTimer.NextFrame };
        }

        if (_waits == _options.MaxWaits)
        {
            return Abort(TransportResult.WaitOverrun, $"still busy after {_waits} times asking for patience");
        }

        _state = State.Holding;
        _waits++;
        return new RxStep { Reply = _wait, Timer = RxTimer.Busy };
    }

    private RxStep Abort(TransportResult result, string detail)
    {
        Reset();
        return new RxStep { Aborted = result, Timer = RxTimer.Stop, Detail = detail };
    }

    private static RxStep Ignore(string? why) => new() { Timer = RxTimer.Keep, Detail = why };
}
