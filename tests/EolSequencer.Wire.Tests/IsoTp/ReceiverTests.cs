using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

// What comes from a control unit. Results agree with python-can-isotp (run) and, where it looks at the case, with
// scapy 2.5.0; a test that names a clause of ISO 15765-2:2016 requires what some of these programs do not do.
public class ReceiverTests
{
    private const string First20 = "101462F190313131";
    private const string Ones = "31313131313131";
    private const string Vin20 = "62F190" + "3131313131313131313131313131313131";

    [Fact]
    public void A_single_frame_is_delivered_without_its_padding()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, "037F2231AAAAAAAA");
        Assert.Equal(["7F2231"], reception.Messages);
        Assert.Empty(reception.Replies);
    }

    [Theory]
    [InlineData("0011223344556677")]
    [InlineData("0811223344556677")]
    [InlineData("07112233")]
    [InlineData("4000")]
    [InlineData("F000000000000000")]
    [InlineData("")]
    [InlineData("2131313131313131")]
    [InlineData("300000")]
    [InlineData("30")]
    public void Malformed_reserved_and_stray_frames_are_ignored(string frame)
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, frame);
        Assert.Equal(RxTimer.Keep, reception.Last.Timer);
        Assert.Equal(default, reception.Last with { Timer = default, Detail = null });
        Assert.NotNull(reception.Last.Detail);
    }

    [Fact]
    public void A_first_frame_is_answered_and_the_message_put_together()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20, "21" + Ones, "22" + Ones);
        Assert.Equal(["300000"], reception.Replies);
        Assert.Equal("7E0", reception.Steps[0].Reply!.Value.Id.ToString());
        Assert.Equal([Vin20], reception.Messages);
        Assert.Equal([RxTimer.NextFrame, RxTimer.NextFrame, RxTimer.Stop], reception.Steps.Select(step => step.Timer));
        Assert.False(reception.Receiver.IsReceiving);
    }

    [Theory, Trait("case", "ITP-03")]
    [InlineData(3, 6, "21", "22", "26")]
    [InlineData(1, 2, "22")]
    [InlineData(2, 1, "21", "21")]
    [InlineData(1, 0, "20")]
    public void A_gap_or_a_repeat_in_the_numbers_ends_the_reception(int due, int came, params string[] numbers)
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, ["101B62F190313131", .. numbers.Select(n => n + Ones)]);
        Assert.Equal([TransportResult.WrongNumber], reception.Aborts);
        Assert.Equal($"number {came} came, consecutive frame {due} (number {due}) was due", reception.Last.Detail);
        Assert.Empty(reception.Messages);

        reception.Feed("23" + Ones, "024E00");
        Assert.Equal(["4E00"], reception.Messages);
    }

    [Theory, Trait("case", "ITP-01")]
    [InlineData("20", true)]
    [InlineData("21", false)]
    public void The_number_after_15_is_0(string sixteenth, bool isRight)
    {
        var numbers = Enumerable.Range(1, 15).Select(n => $"2{n:X}").Append(sixteenth);
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, ["1076313131313131", .. numbers.Select(n => n + Ones)]);
        Assert.Equal(isRight ? [string.Concat(Enumerable.Repeat("31", 118))] : [], reception.Messages);
        Assert.Equal(isRight ? [] : [TransportResult.WrongNumber], reception.Aborts);
    }

    [Fact]
    public void A_single_frame_ends_a_running_reception_and_is_taken()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20, "21" + Ones, "023E00");
        Assert.Equal([TransportResult.UnexpectedFrame], reception.Aborts);
        Assert.Equal(["3E00"], reception.Messages);
        Assert.Equal(RxTimer.Stop, reception.Last.Timer);
    }

    [Fact]
    public void A_first_frame_ends_a_running_reception_and_begins_its_own()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20, "21" + Ones, "1009010203040506", "21070809");
        Assert.Equal([TransportResult.UnexpectedFrame], reception.Aborts);
        Assert.Equal(2, reception.Replies.Length);
        Assert.Equal(["010203040506070809"], reception.Messages);
    }

    // ISO 15765-2:2016, 9.6.3.2 and table 14.
    [Theory]
    [InlineData("1007010203040506")]
    [InlineData("1000000000001462")]
    [InlineData("10000000000014")]
    [InlineData("10000000" + "00000FFF")]
    [InlineData("101462F1")]
    public void A_first_frame_with_a_length_it_may_not_have_gets_no_answer(string frame)
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, frame, "2107");
        Assert.Empty(reception.Replies);
        Assert.Empty(reception.Messages);
    }

    [Theory]
    [InlineData("21070855555555" + "55")]
    [InlineData("210708")]
    public void Eight_bytes_come_in_two_frames_with_or_without_padding(string last) =>
        Assert.Equal(["0102030405060708"], new ReceiverScript(Side.Tester, Side.Unpadded, "1008010203040506", last).Messages);

    [Fact]
    public void Too_long_a_message_is_answered_with_overflow()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, "1000000010000001", "2102030405060708");
        Assert.Equal(["320000"], reception.Replies);
        Assert.Empty(reception.Aborts);
        Assert.Equal("300000", new ReceiverScript(
            Side.Tester, Side.Unpadded with { MaxMessage = 4096 }, "1000000010000001").Replies.Single());
    }

    [Theory, Trait("case", "ITP-02")]
    [InlineData(0, 1)]
    [InlineData(2, 3)]
    public void Silence_ends_the_reception_and_says_what_was_due(byte blockSize, int due)
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded with { BlockSize = blockSize }, "103262F190313131");
        reception.Feed([.. Enumerable.Range(1, due - 1).Select(n => $"2{n:X}{Ones}")]);
        var end = reception.Receiver.Expire();
        Assert.Equal(TransportResult.TimeoutCr, end.Aborted);
        Assert.Contains($"consecutive frame {due} ", end.Detail, StringComparison.Ordinal);
        Assert.Equal(RxTimer.Keep, reception.Receiver.Expire().Timer);

        reception.Feed("21" + Ones);
        Assert.Empty(reception.Messages);
    }

    [Fact, Trait("case", "ITP-07")]
    public void Padding_of_the_last_frame_is_dropped() =>
        Assert.Equal(["010203040506070809"], new ReceiverScript(
            Side.Tester, Side.Unpadded, "1009010203040506", "2107080955555555").Messages);

    [Fact]
    public void Own_block_size_and_separation_time_go_out_after_every_block_but_the_last()
    {
        var options = Side.Unpadded with { BlockSize = 2, SeparationTime = 0x14 };
        var reception = new ReceiverScript(Side.Tester, options, "101E010203040506", "21" + Ones, "22" + Ones, "23" + Ones, "24313131");
        Assert.Equal(["300214", "300214"], reception.Replies);
        Assert.NotNull(reception.Steps[2].Reply);
        Assert.Single(reception.Messages);
    }

    // ISO 15765-2:2016, 9.8.3.
    [Theory]
    [InlineData("500000")]
    [InlineData("300000")]
    [InlineData("21313131")]
    [InlineData("00")]
    public void A_frame_that_does_not_count_leaves_a_reception_and_its_timer_alone(string stray)
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20, stray);
        Assert.Equal(RxTimer.Keep, reception.Last.Timer);
        reception.Feed("21" + Ones, "22" + Ones);
        Assert.Equal([Vin20], reception.Messages);
    }

    [Fact]
    public void A_last_frame_that_is_too_short_is_ignored()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20, "21" + Ones, "223131");
        Assert.Equal(RxTimer.Keep, reception.Last.Timer);
        Assert.True(reception.Receiver.IsReceiving);
    }

    [Fact]
    public void A_busy_receiver_asks_for_patience_and_goes_on()
    {
        var reception = new ReceiverScript(Side.Unit, Side.Unpadded with { MaxWaits = 2 });
        reception.Receiver.IsBusy = true;
        reception.Feed(First20);
        Assert.Equal(["310000"], reception.Replies);
        Assert.Equal(RxTimer.Busy, reception.Last.Timer);
        reception.Feed("21" + Ones);
        Assert.Equal(RxTimer.Keep, reception.Last.Timer);

        reception.Receiver.IsBusy = false;
        var resumed = reception.Receiver.Resume();
        Assert.Equal("300000", Text.Hex(resumed.Reply!.Value.Data));
        Assert.Equal(RxTimer.NextFrame, resumed.Timer);
        reception.Feed("21" + Ones, "22" + Ones);
        Assert.Equal([Vin20], reception.Messages);
    }

    [Fact]
    public void A_receiver_that_stays_busy_gives_up_after_its_number_of_waits()
    {
        var reception = new ReceiverScript(Side.Unit, Side.Unpadded with { MaxWaits = 2 });
        reception.Receiver.IsBusy = true;
        reception.Feed(First20);
        Assert.Equal("310000", Text.Hex(reception.Receiver.Resume().Reply!.Value.Data));
        Assert.Equal(TransportResult.WaitOverrun, reception.Receiver.Resume().Aborted);
        Assert.Equal(RxTimer.Keep, reception.Receiver.Resume().Timer);
    }

    [Fact]
    public void A_first_frame_to_a_group_is_ignored()
    {
        var reception = new ReceiverScript(Side.Group, Side.Unpadded, First20, "023E80");
        Assert.Empty(reception.Replies);
        Assert.Equal(["3E80"], reception.Messages);
    }

    [Fact]
    public void A_reply_that_does_not_go_out_ends_the_reception()
    {
        var reception = new ReceiverScript(Side.Tester, Side.Unpadded, First20);
        Assert.Equal(TransportResult.TimeoutA, reception.Receiver.ReplyFailed().Aborted);
        Assert.Equal(RxTimer.Keep, reception.Receiver.ReplyFailed().Timer);
    }

    [Fact]
    public void A_frame_of_another_identifier_is_not_taken() =>
        Assert.Equal(RxTimer.Keep, new MessageReceiver(Side.Tester, Side.Unpadded).Accept(CanFrame.Parse("7E9#023E00")).Timer);
}
