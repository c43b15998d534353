using CsCheck;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.SocketCan;
using EolSequencer.Wire.Tests.Can;

namespace EolSequencer.Wire.Tests.SocketCan;

/// <summary>
/// Frames byte for byte as the published structures lay them out (Linux, include/uapi/linux/can.h: id at 0, length at 4, flags at 5, data
/// at 8), on a machine with the least significant byte first. Error frames by include/uapi/linux/can/error.h.
/// </summary>
public class SocketFrameLayoutTests
{
    [Theory]
    [InlineData("7E0#0322F190", "E0070000 04000000 0322F190 00000000")]
    [InlineData("123#", "23010000 00000000 00000000 00000000")]
    [InlineData("18DAF110#0102030405060708", "10F1DA98 08000000 01020304 05060708")]
    [InlineData("00000123#AA", "23010080 01000000 AA000000 00000000")]
    public void A_classical_frame_is_a_can_frame_of_16_bytes(string frame, string bytes) => AssertBytes(frame, bytes, SocketFrameLayout.ClassicalSize);

    [Theory]
    [InlineData("7E0##10322F190", "E0070000 04050000 0322F190")]
    [InlineData("7E0##00322F190", "E0070000 04040000 0322F190")]
    [InlineData("18DAF110##1000102030405060708090A0B", "10F1DA98 0C050000 00010203 04050607 08090A0B")]
    public void A_frame_of_CAN_FD_is_a_canfd_frame_of_72_bytes(string frame, string bytes) => AssertBytes(frame, bytes, SocketFrameLayout.FdSize);

    [Fact]
    public void What_is_written_is_read() => Frames.Any.Sample(frame =>
    {
        Span<byte> bytes = stackalloc byte[SocketFrameLayout.FdSize];
        Assert.Equal(frame, SocketFrameLayout.Read(bytes[..SocketFrameLayout.Write(frame, bytes)]).Data);
    });

    [Fact]
    public void A_remote_frame_is_no_data()
    {
        var read = SocketFrameLayout.Read(Bytes("23010040 08000000 00000000 00000000"));
        Assert.True(read.IsRemote);
        Assert.Null(read.Data);
    }

    [Fact]
    [Trait("case", "CAN-02")]
    public void An_error_frame_is_no_frame_004()
    {
        var read = SocketFrameLayout.Read(Bytes("04000020 08000000 00040000 00000000"));
        Assert.Null(read.Data);
        Assert.Equal(ControllerState.Warning, read.State);
    }

    [Theory]
    [InlineData("40000020 08000000 00000000 00000000", ControllerState.BusOff, BusErrors.None)]
    [InlineData("00010020 08000000 00000000 00000000", ControllerState.Active, BusErrors.None)]
    [InlineData("04000020 08000000 00200000 00000000", ControllerState.Passive, BusErrors.None)]
    [InlineData("04000020 08000000 00010000 00000000", null, BusErrors.ReceiveOverflow)]
    [InlineData("04000020 08000000 00020000 00000000", null, BusErrors.TransmitOverflow)]
    [InlineData("A0000020 08000000 00000000 00000000", null, BusErrors.Acknowledge)]
    [InlineData("88000020 08000000 00000400 00000000", null, BusErrors.Stuff)]
    [InlineData("88000020 08000000 00000108 00000000", null, BusErrors.Checksum)]
    [InlineData("88000020 08000000 00001000 00000000", null, BusErrors.Bit)]
    public void Error_frames_tell_errors_and_states(string bytes, ControllerState? state, BusErrors errors) =>
        Assert.Equal(new SocketFrame { State = state, Errors = errors }, SocketFrameLayout.Read(Bytes(bytes)));

    [Theory]
    [InlineData("23010000 09000000 00000000 00000000")]
    [InlineData("00080000 00000000 00000000 00000000")]
    [InlineData("2301")]
    public void What_is_no_frame_is_told(string bytes) => Assert.NotNull(SocketFrameLayout.Read(Bytes(bytes)).Fault);

    private static void AssertBytes(string frame, string expected, int size)
    {
        Assert.True(BitConverter.IsLittleEndian, "the expected bytes are those of a machine with the least significant byte first");
        var bytes = new byte[SocketFrameLayout.FdSize];
        bytes.AsSpan().Fill(0xEE);
        Assert.Equal(size, SocketFrameLayout.Write(CanFrame.Parse(frame), bytes));
        Assert.Equal(expected.Replace(" ", "", StringComparison.Ordinal).PadRight(2 * size, '0'), Convert.ToHexString(bytes.AsSpan(0, size)));
    }

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));
}
