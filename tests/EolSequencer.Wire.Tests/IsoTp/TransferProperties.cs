using CsCheck;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Tests.Can;

namespace EolSequencer.Wire.Tests.IsoTp;

// Sender and receiver face each other, whatever the length, the addressing and the pace.
public class TransferProperties
{
    private static readonly TransportAddress[] Addresses =
    [
        Side.Tester,
        TransportAddress.Extended(CanId.Base(0x6F1), target: 0x12, CanId.Base(0x612), own: 0xF1),
        TransportAddress.Mixed(CanId.Base(0x7E0), CanId.Base(0x7E8), extension: 0x99),
        TransportAddress.NormalFixed(target: 0x55, own: 0xF1),
        TransportAddress.MixedFixed(target: 0x55, own: 0xF1, extension: 0x99),
    ];

    [Fact]
    public void Every_message_arrives_as_it_was_sent() =>
        (from length in Gen.OneOf<int>(Gen.Int[1, 80], Gen.Int[1, 5000])
         from message in Gen.Byte.Array[length]
         from address in Gen.OneOf(Addresses)
         from frameLength in Gen.OneOf(8, 12, 16, 20, 24, 32, 48, 64)
         from isFd in Gen.Bool
         from padding in Gen.OneOf<byte?>(null, 0x00, 0xAA, 0xCC)
         from blockSize in Gen.Byte
         from separation in Gen.Byte
         select (message, address, options: new TransportOptions
         {
             IsFd = isFd || frameLength > 8,
             TransmitLength = frameLength,
             Padding = padding,
             BlockSize = blockSize,
             SeparationTime = separation,
             MaxMessage = 5000,
         }))
        .Sample(c => Assert.Equal(c.message, Transfer(c.message, c.address, c.options)));

    [Fact]
    public void No_frame_at_all_makes_a_receiver_stumble() =>
        Frames.Any.Array[1, 30].Sample(frames =>
        {
            var receiver = new MessageReceiver(Side.Tester, new TransportOptions { MaxMessage = 5000 });
            foreach (var frame in frames)
            {
                var data = frame.Data;
                var step = receiver.Accept(frame.IsFd ? CanFrame.Fd(Side.Tester.Receive.Id, data) : CanFrame.Classical(Side.Tester.Receive.Id, data));
                Assert.Equal(receiver.IsReceiving, step.Timer switch
                {
                    RxTimer.NextFrame => true,
                    RxTimer.Stop => false,
                    _ => receiver.IsReceiving,
                });
            }
        });

    private static byte[] Transfer(byte[] message, TransportAddress address, TransportOptions options)
    {
        var sender = new MessageSender(address, options);
        var receiver = new MessageReceiver(address.Reversed(), options);
        var step = sender.Begin(message);
        while (step.Frame is { } frame)
        {
            var arrival = receiver.Accept(frame);
            Assert.Null(arrival.Aborted);
            if (!arrival.Message.IsEmpty)
            {
                Assert.Equal(TransportResult.Ok, sender.Confirm().Ended);
                return arrival.Message.ToArray();
            }

            step = sender.Confirm();
            step = arrival.Reply is { } reply ? sender.Accept(reply) : step;
            step = step.Timer == TxTimer.Gap ? sender.Next() : step;
        }

        return [];
    }
}
