using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

// Address bytes and long frames shift everything that follows. Frames were compared with python-can-isotp (run).
public class SenderAddressingTests
{
    private static readonly TransportAddress ExtendedTester =
        TransportAddress.Extended(CanId.Base(0x6F1), target: 0x12, CanId.Base(0x612), own: 0xF1);

    [Fact]
    public void Extended_addressing_puts_the_target_first()
    {
        var single = new SenderScript(ExtendedTester, new TransportOptions(), Text.Counting(1, 6));
        Assert.Equal(["1206010203040506"], single.Hex);
        var two = new SenderScript(ExtendedTester, new TransportOptions(), Text.Counting(1, 7), "F1300000");
        Assert.Equal(["1210070102030405", "12210607CCCCCCCC"], two.Hex);
        Assert.Equal(TransportResult.Ok, two.Last.Ended);
    }

    [Fact]
    public void A_flow_control_for_another_address_is_not_taken() =>
        Assert.Single(new SenderScript(ExtendedTester, new TransportOptions(), Text.Counting(1, 7), "F2300000").Frames);

    [Fact]
    public void Mixed_addressing_puts_the_extension_first()
    {
        var address = TransportAddress.Mixed(CanId.Base(0x7E0), CanId.Base(0x7E8), extension: 0x99);
        var two = new SenderScript(address, new TransportOptions(), Text.Counting(1, 7), "99300000");
        Assert.Equal(["9910070102030405", "99210607CCCCCCCC"], two.Hex);
    }

    [Fact]
    public void Fixed_identifiers_are_made_of_both_addresses()
    {
        var physical = new SenderScript(TransportAddress.NormalFixed(target: 0x55, own: 0xF1), Side.Unpadded, Text.Bytes("22F190"));
        Assert.Equal("18DA55F1#0322F190", physical.Frames.Single().ToString());
        var group = TransportAddress.Functional(Route.NormalFixedGroup(target: 0x55, source: 0xF1));
        Assert.Equal("18DB55F1#023E80", new SenderScript(group, Side.Unpadded, Text.Bytes("3E80")).Frames.Single().ToString());
        var mixed = new SenderScript(TransportAddress.MixedFixed(target: 0x55, own: 0xF1, extension: 0x99), Side.Unpadded, Text.Bytes("3E80"));
        Assert.Equal("18CE55F1#99023E80", mixed.Frames.Single().ToString());
        var mixedGroup = TransportAddress.Functional(Route.MixedFixedGroup(target: 0x55, source: 0xF1, extension: 0x99));
        Assert.Equal("18CD55F1#99023E80", new SenderScript(mixedGroup, Side.Unpadded, Text.Bytes("3E80")).Frames.Single().ToString());
    }

    [Fact]
    public void Answers_come_back_on_the_reversed_address()
    {
        var tester = TransportAddress.NormalFixed(target: 0x55, own: 0xF1);
        Assert.Equal(CanId.Extended(0x18DAF155), tester.Receive.Id);
        Assert.Equal(TransportAddress.NormalFixed(target: 0xF1, own: 0x55), tester.Reversed());
    }

    [Theory]
    [InlineData(7, "0700010203040506")]
    [InlineData(8, "00080001020304050607CCCC")]
    [InlineData(11, "000B000102030405060708090ACCCCCC")]
    public void Short_messages_take_the_shortest_FD_frame(int length, string frame) =>
        Assert.Equal([frame], new SenderScript(Side.Tester, Side.Fd, Text.Counting(0, length)).Hex);

    [Fact]
    public void An_FD_single_frame_holds_62_bytes()
    {
        var full = new SenderScript(Side.Tester, Side.Fd, Text.Counting(0, 62)).Frames.Single();
        Assert.Equal(64, full.Data.Length);
        Assert.Equal("003E0001", Text.Hex(full.Data)[..8]);

        var two = new SenderScript(Side.Tester, Side.Fd with { Padding = null }, Text.Counting(0, 63), "300000");
        Assert.Equal(["103F" + Convert.ToHexString(Text.Counting(0, 62)), "213E"], two.Hex);
    }

    [Fact]
    public void FD_frames_carry_5000_bytes_in_80()
    {
        var transfer = new SenderScript(Side.Tester, Side.Fd, Text.Counting(0, 5000), "300000");
        Assert.Equal(80, transfer.Frames.Count);
        Assert.StartsWith("1000000013880001", transfer.Hex[0], StringComparison.Ordinal);
        Assert.All(transfer.Frames, frame => Assert.True(frame.IsFd));
    }

    [Fact]
    public void Flow_controls_are_told_from_all_other_frames()
    {
        Assert.True(ExtendedTester.IsFlowControl(CanFrame.Parse("612#F1300000")));
        Assert.False(ExtendedTester.IsFlowControl(CanFrame.Parse("612#F2300000")));
        Assert.False(ExtendedTester.IsFlowControl(CanFrame.Parse("612#F1210000")));
        Assert.False(ExtendedTester.IsFlowControl(CanFrame.Parse("612#F1")));
        Assert.False(Side.Tester.IsFlowControl(CanFrame.Parse("7E8#")));
    }
}
