using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

// What leaves for a control unit. Frames were compared with python-can-isotp (run), most also with the ISO-TP
// fragmentation of scapy 2.5.0 and dissected by tshark 4.0.17; where a test names ISO 15765-2:2016 the standard
// requires what some of these programs do not do.
public class SenderTests
{
    [Theory]
    [InlineData("3E00", "023E00CCCCCCCCCC")]
    [InlineData("22F190", "0322F190CCCCCCCC")]
    [InlineData("31010203040506", "0731010203040506")]
    public void A_message_up_to_7_bytes_is_a_single_frame(string message, string frame)
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Bytes(message));
        Assert.Equal([frame], transfer.Hex);
        Assert.Equal(TransportResult.Ok, transfer.Last.Ended);
        Assert.False(transfer.Sender.IsSending);
    }

    [Fact]
    public void Eight_bytes_go_in_two_frames()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Bytes("3101020304050607"), "300000");
        Assert.Equal(["1008310102030405", "210607CCCCCCCCCC"], transfer.Hex);
        Assert.Equal(TransportResult.Ok, transfer.Last.Ended);
    }

    [Fact]
    public void An_answer_of_20_bytes_goes_in_three_frames()
    {
        var transfer = new SenderScript(Side.Unit, new TransportOptions(), VinAnswer, "300000");
        Assert.Equal(["101462F190313131", "2131313131313131", "2231313131313131"], transfer.Hex);
        Assert.All(transfer.Frames, frame => Assert.Equal(0x7E8u, frame.Id.Value));
    }

    [Fact, Trait("case", "ITP-01")]
    public void The_number_after_15_is_0()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(1, 114), "300000");
        Assert.Equal(17, transfer.Frames.Count);
        Assert.Equal("1072010203040506", transfer.Hex[0]);
        Assert.Equal("210708090A0B0C0D", transfer.Hex[1]);
        Assert.Equal("2E62636465666768", transfer.Hex[14]);
        Assert.Equal("2F696A6B6C6D6E6F", transfer.Hex[15]);
        Assert.Equal("20707172CCCCCCCC", transfer.Hex[16]);
    }

    [Fact]
    public void A_length_of_4095_still_fits_into_12_bits()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 4095), "300000");
        Assert.Equal(586, transfer.Frames.Count);
        Assert.Equal("1FFF000102030405", transfer.Hex[0]);
        Assert.Equal("29FECCCCCCCCCCCC", transfer.Hex[^1]);
    }

    [Fact]
    public void A_length_of_4096_takes_the_escape_sequence()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 4096), "300000");
        Assert.Equal(586, transfer.Frames.Count);
        Assert.Equal("1000000010000001", transfer.Hex[0]);
        Assert.Equal("2102030405060708", transfer.Hex[1]);
        Assert.Equal("29FAFBFCFDFEFFCC", transfer.Hex[^1]);
    }

    [Fact]
    public void A_block_size_of_two_asks_for_a_flow_control_every_two_frames()
    {
        var message = Text.Counting(0, 40);
        var all = new SenderScript(Side.Tester, new TransportOptions(), message, "300200", "300200", "300200");
        Assert.Equal(6, all.Frames.Count);
        Assert.Equal(TransportResult.Ok, all.Last.Ended);

        var stopped = new SenderScript(Side.Tester, new TransportOptions(), message, "300200");
        Assert.Equal(3, stopped.Frames.Count);
        Assert.Equal("22", stopped.Hex[^1][..2]);
        Assert.Equal(TxTimer.FlowControl, stopped.Last.Timer);
    }

    // ISO 15765-2:2016, 9.6.5.6: a sender takes block size and separation time from each flow control.
    [Fact]
    public void Every_flow_control_sets_block_size_and_gap_anew()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 48), "30010A", "300214", "300000");
        Assert.Equal(TransportResult.Ok, transfer.Last.Ended);
        Assert.Equal([TimeSpan.FromMilliseconds(20)], transfer.Gaps);
    }

    [Fact]
    public void A_receiver_that_asks_for_patience_gets_it()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions { MaxWaits = 3 }, VinAnswer, "310000", "310000", "310000", "300000");
        Assert.Equal(3, transfer.Frames.Count);
        Assert.Equal(TransportResult.Ok, transfer.Last.Ended);
    }

    [Fact]
    public void A_receiver_that_asks_for_patience_for_ever_does_not_hold_the_sender()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions { MaxWaits = 3 }, VinAnswer, "310000", "310000", "310000", "310000");
        Assert.Equal(TransportResult.Error, transfer.Last.Ended);
        Assert.Contains("more than 3 times", transfer.Last.Detail, StringComparison.Ordinal);
        Assert.Single(transfer.Frames);
    }

    [Fact, Trait("case", "ITP-04")]
    public void An_overflow_ends_the_transfer_at_once()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 60), "320000");
        Assert.Equal(TransportResult.BufferOverflow, transfer.Last.Ended);
        Assert.Single(transfer.Frames);
    }

    // ISO 15765-2:2016, 9.6.5.2.
    [Theory]
    [InlineData("330000")]
    [InlineData("3F0000")]
    public void A_reserved_flow_status_ends_the_transfer(string flow)
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), VinAnswer, flow);
        Assert.Equal(TransportResult.InvalidFlowStatus, transfer.Last.Ended);
        Assert.Single(transfer.Frames);
    }

    // ISO 15765-2:2016, 9.6.5.5.
    [Theory, Trait("case", "ITP-05")]
    [InlineData("300080", 127_000)]
    [InlineData("3000FA", 127_000)]
    [InlineData("3000F5", 500)]
    [InlineData("30007F", 127_000)]
    [InlineData("300001", 1_000)]
    public void The_gap_lies_between_consecutive_frames_only(string flow, int microseconds)
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 34), flow);
        Assert.Equal(5, transfer.Frames.Count);
        Assert.Equal(Enumerable.Repeat(TimeSpan.FromMicroseconds(microseconds), 3), transfer.Gaps);
    }

    [Fact, Trait("case", "ITP-06")]
    public void Without_flow_control_the_transfer_ends_and_the_next_one_is_not_harmed()
    {
        var transfer = new SenderScript(Side.Tester, new TransportOptions(), Text.Counting(0, 40));
        var end = transfer.Sender.Expire();
        Assert.Equal(TransportResult.TimeoutBs, end.Ended);
        Assert.Contains("no flow control", end.Detail, StringComparison.Ordinal);

        Assert.Equal("023E00CCCCCCCCCC", Text.Hex(transfer.Sender.Begin(Text.Bytes("3E00")).Frame!.Value.Data));
        Assert.Equal(TransportResult.Ok, transfer.Sender.Confirm().Ended);
    }

    [Theory, Trait("case", "ITP-07")]
    [InlineData(0x00, "0210030000000000")]
    [InlineData(0xAA, "021003AAAAAAAAAA")]
    [InlineData(null, "021003")]
    public void Padding_with_zeros_is_not_no_padding(int? padding, string frame) =>
        Assert.Equal(
            [frame],
            new SenderScript(Side.Tester, new TransportOptions { Padding = (byte?)padding }, Text.Bytes("1003")).Hex);

    [Fact]
    public void A_group_is_sent_single_frames_only()
    {
        var refused = new SenderScript(Side.Group, new TransportOptions(), Text.Counting(0, 8));
        Assert.Equal(TransportResult.Error, refused.Last.Ended);
        Assert.Empty(refused.Frames);
        Assert.Equal(["0700010203040506"], new SenderScript(Side.Group, new TransportOptions(), Text.Counting(0, 7)).Hex);
    }

    [Fact]
    public void A_flow_control_that_overtakes_the_confirmation_counts()
    {
        var sender = new MessageSender(Side.Tester, new TransportOptions());
        sender.Begin(VinAnswer);
        Assert.Equal(TxTimer.Keep, sender.Accept(CanFrame.Parse("7E8#300000")).Timer);
        Assert.Equal("21", Text.Hex(sender.Confirm().Frame!.Value.Data)[..2]);
    }

    [Fact]
    public void Frames_nobody_awaits_change_nothing()
    {
        var sender = new MessageSender(Side.Tester, new TransportOptions());
        Assert.Equal(TxTimer.Keep, sender.Accept(CanFrame.Parse("7E8#300000")).Timer);
        sender.Begin(VinAnswer);
        sender.Confirm();
        foreach (var stray in new[] { "7E8#023E00", "7E8#2131", "7E8#3000", "7E8#", "7E8#5000", "7E9#300000" })
        {
            Assert.Equal(new TxStep { Timer = TxTimer.Keep }, sender.Accept(CanFrame.Parse(stray)) with { Detail = null });
        }

        sender.Accept(CanFrame.Parse("7E8#300100"));
        Assert.Equal(TxTimer.Keep, sender.Next().Timer);
        Assert.Equal(TxTimer.Keep, sender.Expire().Timer);
    }

    [Fact]
    public void A_frame_that_does_not_go_out_ends_the_transfer()
    {
        var sender = new MessageSender(Side.Tester, new TransportOptions());
        sender.Begin(VinAnswer);
        Assert.Equal(TransportResult.TimeoutA, sender.Fail().Ended);
        Assert.False(sender.IsSending);
        Assert.Equal(TxTimer.Keep, sender.Confirm().Timer);
    }

    [Fact]
    public void Wrong_use_is_refused()
    {
        var sender = new MessageSender(Side.Tester, new TransportOptions());
        Assert.Throws<ArgumentException>(() => sender.Begin(default));
        sender.Begin(VinAnswer);
        Assert.Throws<InvalidOperationException>(() => sender.Begin(VinAnswer));
        sender.Reset();
        Assert.NotNull(sender.Begin(VinAnswer).Frame);
        Assert.Throws<ArgumentException>(() => new MessageSender(Side.Tester, new TransportOptions { TransmitLength = 64 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TransportOptions { TransmitLength = 13 });
    }

    private static byte[] VinAnswer => Text.Bytes("62F190" + string.Concat(Enumerable.Repeat("31", 17)));
}
