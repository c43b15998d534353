using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

/// <summary>
/// Runs a sender to its end or until it waits for a flow control that the script no longer has. Every frame is
/// confirmed at once. The log reads like a trace: frames as hex, <c>&lt;</c> a flow control taken, <c>~</c> a gap.
/// </summary>
internal sealed class SenderScript
{
    private readonly Queue<string> _flowControls;
    private readonly TransportAddress _address;

    public SenderScript(TransportAddress address, TransportOptions options, byte[] message, params string[] flowControls)
    {
        _address = address;
        _flowControls = new Queue<string>(flowControls);
        Sender = new MessageSender(address, options);
        Run(Sender.Begin(message));
    }

    public MessageSender Sender { get; }

    public List<CanFrame> Frames { get; } = [];

    public List<TimeSpan> Gaps { get; } = [];

    public TxStep Last { get; private set; }

    public string[] Hex => [.. Frames.Select(frame => Convert.ToHexString(frame.Data.Span))];

    private void Run(TxStep step)
    {
        while (true)
        {
            Last = step;
            if (step.Frame is { } frame)
            {
                Frames.Add(frame);
                step = Sender.Confirm();
            }
            else if (step.Timer == TxTimer.Gap)
            {
                Gaps.Add(step.Gap);
                step = Sender.Next();
            }
            else if (step.Timer == TxTimer.FlowControl && _flowControls.TryDequeue(out var flow))
            {
                step = Sender.Accept(CanFrame.Classical(_address.Receive.Id, Text.Bytes(flow)));
            }
            else
            {
                return;
            }
        }
    }
}
