using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

// Address bytes and long frames change every length rule. Compared with python-can-isotp (run); the length table is
// table 13 of ISO 15765-2:2016, as printed in implementations that comment on it clause by clause.
public class ReceiverAddressingTests
{
    private static readonly TransportAddress Extended =
        TransportAddress.Extended(CanId.Base(0x6F1), target: 0x12, CanId.Base(0x612), own: 0xF1);

    [Theory]
    [InlineData("F1023E00", "3E00")]
    [InlineData("F106010203040506", "010203040506")]
    [InlineData("F2023E00", null)]
    [InlineData("F107010203040506", null)]
    [InlineData("F1", null)]
    public void Extended_addressing_takes_frames_for_its_own_address(string frame, string? message) =>
        Assert.Equal(message is null ? [] : [message], new ReceiverScript(Extended, Side.Unpadded, frame).Messages);

    // Table 14: a first frame of 8 bytes announces at least 7 bytes with an address byte, 8 without.
    [Fact]
    public void Seven_bytes_take_two_frames_with_an_address_byte()
    {
        var reception = new ReceiverScript(Extended, Side.Unpadded, "F110070102030405", "F1210607");
        Assert.Equal(["12300000"], reception.Replies);
        Assert.Equal(["01020304050607"], reception.Messages);
        Assert.Empty(new ReceiverScript(Extended, Side.Unpadded, "F110060102030405").Replies);
    }

    [Theory]
    [InlineData(12, 8, 10)]
    [InlineData(16, 11, 14)]
    [InlineData(20, 15, 18)]
    [InlineData(24, 19, 22)]
    [InlineData(32, 23, 30)]
    [InlineData(48, 31, 46)]
    [InlineData(64, 47, 62)]
    public void An_FD_single_frame_is_no_longer_than_its_content_needs(int frameLength, int least, int most)
    {
        for (var length = 0; length < 256; length++)
        {
            var frame = new byte[frameLength];
            frame[1] = (byte)length;
            Assert.Equal(length >= least && length <= most, IsTaken(Side.Tester, frame));

            var prefixed = new byte[frameLength];
            (prefixed[0], prefixed[2]) = (0xF1, (byte)length);
            Assert.Equal(length >= least - 1 && length <= most - 1, IsTaken(Extended, prefixed));
        }
    }

    [Theory]
    [InlineData("000A0102030405060708090A", "0102030405060708090A")]
    [InlineData("070102030405060700000000", null)]
    [InlineData("000701020304050607000000", null)]
    public void An_FD_single_frame_needs_its_escape_sequence(string frame, string? message) =>
        Assert.Equal(message is null ? [] : [message], new ReceiverScript(Side.Tester, Side.Fd, frame).Messages);

    [Theory]
    [InlineData(64, 63, true)]
    [InlineData(64, 62, false)]
    [InlineData(12, 11, true)]
    [InlineData(12, 10, false)]
    public void An_FD_first_frame_announces_more_than_a_single_frame_holds(int frameLength, int announced, bool isTaken)
    {
        var frame = new byte[frameLength];
        (frame[0], frame[1]) = (0x10, (byte)announced);
        Assert.Equal(isTaken, new ReceiverScript(Side.Tester, Side.Fd, Convert.ToHexString(frame)).Receiver.IsReceiving);
    }

    private static bool IsTaken(TransportAddress address, byte[] frame) =>
        new ReceiverScript(address, Side.Fd, Convert.ToHexString(frame)).Messages.Length == 1;
}
