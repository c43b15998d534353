using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>A control unit's transport layer: puts requests together and sends responses frame by frame.</summary>
internal sealed class UnitTransport : ICanListener, IFrameOwner, IDue
{
    private const int Data = 0;
    private const int FlowControl = 1;
    private const int SenderTimer = 0;
    private const int ReceiverTimer = 1;

    private static readonly TransportTimers Timers = new();

    // The frames to a group are those of no one's own; a listener of its own keeps them apart.
    private static readonly TransportAddress Group = TransportAddress.Functional(new Route(CanId.Base(0x7DF)));

    private readonly BusPort _port;
    private readonly TransportAddress _address;
    private readonly MessageReceiver _receiver;
    private readonly MessageReceiver _groupReceiver;
    private readonly MessageSender _sender;
    private readonly Queue<byte[]> _toSend = new();
    private readonly IMessageTaker _taker;
    private TxTimer _awaited;
    private int _senderTimer;
    private int _receiverTimer;

    public UnitTransport(BusPort port, TransportAddress address, TransportOptions options, IMessageTaker taker)
    {
        (_port, _address, _taker) = (port, address, taker);
        _receiver = new MessageReceiver(address, options);
        _groupReceiver = new MessageReceiver(Group, options);
        _sender = new MessageSender(address, options);
        port.Listen(address.Receive.Id, this, Repeats.All);
        port.Listen(Group.Receive.Id, this, Repeats.All);
    }

    private ISchedule Schedule => _port.Bus.Schedule;

    public bool IsSending => _sender.IsSending;

    /// <summary>Sends a response behind those that still go out.</summary>
    public void Send(byte[] message)
    {
        if (_sender.IsSending) _toSend.Enqueue(message);
        else Do(_sender.Begin(message));
    }

    /// <summary>Forgets everything under way, as a unit does that loses its supply or its bus.</summary>
    public void Forget()
    {
        _port.Withdraw(this);
        _toSend.Clear();
        _sender.Reset();
        _receiver.Reset();
        _groupReceiver.Reset();
        _senderTimer++;
        _receiverTimer++;
    }

    /// <inheritdoc/>
    public void Received(in CanFrame frame, long stamp)
    {
        if (frame.Id == Group.Receive.Id) Do(_groupReceiver.Accept(frame), isForGroup: true);
        else if (_address.IsFlowControl(frame)) Do(_sender.Accept(frame));
        else Do(_receiver.Accept(frame), isForGroup: false);
    }

    /// <inheritdoc/>
    public void Silenced(CanId id, long lastStamp)
    {
        // Requests come in no cycle.
    }

    /// <inheritdoc/>
    public void Sent(int what)
    {
        if (what == Data) Do(_sender.Confirm());
        else ArmReceiver();
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        if (what == Timer(SenderTimer, _senderTimer)) Do(_sender.IsSending ? SenderDue() : default);
        else if (what == Timer(ReceiverTimer, _receiverTimer)) Do(_receiver.Expire(), isForGroup: false);
    }

    private TxStep SenderDue() => _awaited == TxTimer.Gap ? _sender.Next() : _sender.Expire();

    private void Do(in TxStep step)
    {
        if (step.Timer != TxTimer.Keep)
        {
            _awaited = step.Timer;
            _senderTimer++;
        }

        if (step.Frame is { } frame) _port.Send(frame, this, Data);
        if (step.Timer == TxTimer.FlowControl) Arm(Timers.FlowControl, SenderTimer, _senderTimer);
        if (step.Timer == TxTimer.Gap) Arm(step.Gap, SenderTimer, _senderTimer);
        if (step.Ended is null) return;

        if (_toSend.TryDequeue(out var next)) Do(_sender.Begin(next));
        else _taker.SendingEnded();
    }

    private void Do(in RxStep step, bool isForGroup)
    {
        if (step.Timer == RxTimer.Stop) _receiverTimer++;
        if (step.Reply is { } reply) _port.Send(reply, this, FlowControl);
        else if (step.Timer == RxTimer.NextFrame) ArmReceiver();
        if (!step.Message.IsEmpty) _taker.Take(step.Message, isForGroup);
    }

    private void ArmReceiver()
    {
        if (_receiver.IsReceiving) Arm(Timers.NextFrame, ReceiverTimer, ++_receiverTimer);
    }

    private void Arm(TimeSpan wait, int which, int version) => Schedule.At(Schedule.Now + wait, this, Timer(which, version));

    private static int Timer(int which, int version) => (version << 1) | which;
}
