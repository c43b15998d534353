using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

/// <summary>Feeds frames written as hex to a receiver and keeps what came of them.</summary>
internal sealed class ReceiverScript
{
    private readonly TransportAddress _address;
    private readonly bool _isFd;

    public ReceiverScript(TransportAddress address, TransportOptions options, params string[] frames)
    {
        (_address, _isFd) = (address, options.IsFd);
        Receiver = new MessageReceiver(address, options);
        Feed(frames);
    }

    public MessageReceiver Receiver { get; }

    public List<RxStep> Steps { get; } = [];

    public string[] Messages => [.. Steps.Where(step => !step.Message.IsEmpty).Select(step => Text.Hex(step.Message))];

    public string[] Replies => [.. Steps.Where(step => step.Reply is not null).Select(step => Text.Hex(step.Reply!.Value.Data))];

    public TransportResult[] Aborts => [.. Steps.Where(step => step.Aborted is not null).Select(step => step.Aborted!.Value)];

    public RxStep Last => Steps[^1];

    public void Feed(params string[] frames)
    {
        foreach (var hex in frames)
        {
            var id = _address.Receive.Id;
            Steps.Add(Receiver.Accept(_isFd ? CanFrame.Fd(id, Text.Bytes(hex)) : CanFrame.Classical(id, Text.Bytes(hex))));
        }
    }
}
