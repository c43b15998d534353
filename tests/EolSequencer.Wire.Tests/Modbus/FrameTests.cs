using CsCheck;
using EolSequencer.Wire.Modbus;

namespace EolSequencer.Wire.Tests.Modbus;

// Frames come in pieces, and what is no frame must cost neither a crash nor a wrong value.
public class FrameTests
{
    // Sources: MODBUS over Serial Line V1.02, appendix B (02 07 has the check 1241, sent 41 12); the check value of CRC-16/MODBUS (over 123456789) is 4B37.
    [Theory]
    [InlineData("0207", 0x1241)]
    [InlineData("313233343536373839", 0x4B37)]
    public void The_check_of_published_frames(string bytes, int crc) => Assert.Equal(crc, Crc16.Of(Text.Bytes(bytes)));

    [Fact]
    public void A_serial_frame_carries_its_check_low_byte_first()
    {
        var bytes = new RtuFrame(0x02, Text.Bytes("07")).ToBytes();
        Assert.Equal("02074112", Text.Hex(bytes));
        Assert.Equal("07", Text.Hex(RtuFrame.Read(bytes).Value.Pdu));
        bytes[1] ^= 1;
        Assert.Equal("check 1241 instead of D280 in 02064112", RtuFrame.Read(bytes).Fault);
    }

    [Theory]
    [InlineData("11 03 06 AE41 5652 4340")]
    [InlineData("11 01 05 CD6BB20E1B")]
    [InlineData("11 83 02")]
    [InlineData("11 10 0001 0002")]
    [InlineData("11 05 00AC FF00")]
    public void The_function_tells_where_a_serial_answer_ends(string content)
    {
        var message = Text.Bytes(content);
        var bytes = new RtuFrame(message[0], message.AsMemory(1)).ToBytes();
        var receiver = new RtuReceiver(isServer: false);
        foreach (var one in bytes[..^1])
        {
            receiver.Add([one]);
            Assert.False(receiver.TryTake(out _));
        }

        receiver.Add(bytes[^1..]);
        Assert.True(receiver.TryTake(out var frame));
        Assert.Equal(message[1..], frame.Value.Pdu.ToArray());
        Assert.False(receiver.TryTake(out _));
    }

    [Fact]
    public void A_serial_request_of_any_function_is_found()
    {
        byte[][] requests =
        [
            ReadBits.MakeRequest(FunctionCode.ReadCoils, new Row(1, 3)), ReadRegisters.MakeRequest(FunctionCode.ReadInputRegisters, new Row(1, 3)),
            WriteSingle.MakeRequest(4, isOn: true), WriteSingle.MakeRequest(4, 7), WriteMultiple.MakeRequest(1, [true, false]), WriteMultiple.MakeRequest(1, [(ushort)1, 2, 3]),
        ];
        var receiver = new RtuReceiver(isServer: true);
        foreach (var request in requests) receiver.Add(new RtuFrame(7, request).ToBytes());
        foreach (var request in requests)
        {
            Assert.True(receiver.TryTake(out var frame));
            Assert.Equal(request, frame.Value.Pdu.ToArray());
        }
    }

    [Fact]
    public void A_TCP_stream_may_be_cut_anywhere() =>
        (from messages in Gen.Byte.Array[1, 253].Array[1, 6] from cut in Gen.Int[1, 40] select (messages, cut))
        .Sample(c =>
        {
            var receiver = new TcpReceiver();
            var came = new List<byte[]>();
            foreach (var piece in c.messages.SelectMany((pdu, at) => new TcpFrame((ushort)at, 9, pdu).ToBytes()).Chunk(c.cut))
            {
                receiver.Add(piece);
                while (receiver.TryTake(out var frame))
                {
                    Assert.Equal((came.Count, 9), (frame.Transaction, frame.Unit));
                    came.Add(frame.Pdu.ToArray());
                }
            }

            Assert.Equal(c.messages, came);
        });

    [Theory]
    [InlineData("0001 0001 0006 01 03", "00010001000601 is no header of a message (protocol 1, length 6; protocol 0 and 2 to 254 are due)")]
    [InlineData("0001 0000 0001 01 03", "00010000000101 is no header of a message (protocol 0, length 1; protocol 0 and 2 to 254 are due)")]
    [InlineData("0001 0000 00FF 01 03", "0001000000FF01 is no header of a message (protocol 0, length 255; protocol 0 and 2 to 254 are due)")]
    public void A_lost_place_in_the_stream_is_told_and_nothing_is_taken_any_more(string bytes, string fault)
    {
        var receiver = new TcpReceiver();
        receiver.Add(Text.Bytes(bytes));
        Assert.False(receiver.TryTake(out _));
        Assert.Equal(fault, receiver.Fault);
        receiver.Add(new TcpFrame(1, 1, Text.Bytes("0302000A")).ToBytes());
        Assert.False(receiver.TryTake(out _));
        receiver.Clear();
        receiver.Add(new TcpFrame(1, 1, Text.Bytes("0302000A")).ToBytes());
        Assert.True(receiver.TryTake(out _));
    }
}
