using EolSequencer.Wire.Can;
using EolSequencer.Wire.Pcap;

namespace EolSequencer.Wire.Tests.Pcap;

// A capture is read by programs that are not ours; one byte beside its place and they show nothing.
// Source: tcpdump.org, LINKTYPE_CAN_SOCKETCAN (227), and draft-ietf-opsawg-pcap.
public class CanCaptureTests
{
    [Fact]
    public void The_file_header_names_nanoseconds_and_link_type_227() =>
        Assert.Equal("4D3CB2A1" + "02000400" + "00000000" + "00000000" + "48000000" + "E3000000", Written());

    [Theory]
    [InlineData("7E0#0322F190", "0C000000", "000007E0" + "04000000" + "0322F190")]
    [InlineData("18DA55F1#02", "09000000", "98DA55F1" + "01000000" + "02")]
    [InlineData("123#", "08000000", "00000123" + "00000000")]
    [InlineData("7E0##0AABB", "0A000000", "000007E0" + "02040000" + "AABB")]
    [InlineData("7E0##1AABB", "0A000000", "000007E0" + "02050000" + "AABB")]
    public void A_frame_stands_behind_its_record_header(string frame, string length, string bytes) =>
        Assert.Equal("02000000" + "64000000" + length + length + bytes, Written(frame)[48..]);

    [Fact]
    public void A_capture_does_not_begin_before_its_beginning() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new CanCapture(new MemoryStream()).Write(default, TimeSpan.FromTicks(-1)));

    // Each frame ends 2.0000001 s after the beginning.
    private static string Written(params string[] frames)
    {
        using var file = new MemoryStream();
        var capture = new CanCapture(file);
        foreach (var frame in frames)
        {
            capture.Write(CanFrame.Parse(frame), new TimeSpan(20_000_001));
        }

        return Convert.ToHexString(file.ToArray());
    }
}
