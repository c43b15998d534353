using System.Text;
using CsCheck;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.SerialCan;
using EolSequencer.Wire.Tests.Can;

namespace EolSequencer.Wire.Tests.SerialCan;

/// <summary>
/// CAN in ASCII against the examples of the driver that documents it (Linux, drivers/net/can/slcan/slcan-core.c), and what a noisy
/// line makes of it.
/// </summary>
public class SerialCanTextTests
{
    [Theory]
    [InlineData("t1230", "123#")]
    [InlineData("t4563112233", "456#112233")]
    [InlineData("T12ABCDEF2AA55", "12ABCDEF#AA55")]
    public void The_driver_s_examples_are_read_and_written(string line, string frame)
    {
        Assert.Equal(new SerialCanLine(SerialCanKind.Frame) { Frame = CanFrame.Parse(frame) }, Read(line));
        Assert.Equal(line + "\r", Encoding.ASCII.GetString(SerialCanText.Write(CanFrame.Parse(frame))));
    }

    [Theory]
    [InlineData("r1230", 0x123)]
    [InlineData("r1238", 0x123)]
    [InlineData("R000001230", 0x123)]
    public void A_remote_frame_is_no_data_frame(string line, uint id)
    {
        var read = Read(line);
        Assert.Equal(SerialCanKind.Remote, read.Kind);
        Assert.Equal(id, read.Frame.Id.Value);
    }

    [Theory]
    [InlineData("e1a", BusErrors.Acknowledge)]
    [InlineData("e3bcO", BusErrors.Bit | BusErrors.Checksum | BusErrors.TransmitOverflow)]
    [InlineData("e4Bfso", BusErrors.Bit | BusErrors.Form | BusErrors.Stuff | BusErrors.ReceiveOverflow)]
    public void Errors_are_read(string line, BusErrors errors) => Assert.Equal(new SerialCanLine(SerialCanKind.Errors) { Errors = errors }, Read(line));

    [Theory]
    [InlineData("sb256256", ControllerState.BusOff)]
    [InlineData("sa057033", ControllerState.Active)]
    [InlineData("sw096000", ControllerState.Warning)]
    [InlineData("sp000128", ControllerState.Passive)]
    public void States_are_read(string line, ControllerState state) => Assert.Equal(new SerialCanLine(SerialCanKind.State) { State = state }, Read(line));

    [Fact]
    public void Confirmations_and_refusals_are_told_apart()
    {
        Assert.Equal(SerialCanKind.Done, Read("").Kind);
        Assert.Equal(SerialCanKind.Refused, SerialCanText.Read([], endsWithBell: true).Kind);
        Assert.Equal(SerialCanKind.Sent, Read("z").Kind);
        Assert.Equal(SerialCanKind.Sent, Read("Z").Kind);
        Assert.Equal("V1013", Read("V1013").Text);
    }

    [Fact]
    public void A_time_behind_the_data_is_no_data() => Assert.Equal("123#BEEF", Read("t1232BEEFEA5F").Frame.ToString());

    [Theory]
    [InlineData("t12")]
    [InlineData("t123")]
    [InlineData("t1239")]
    [InlineData("t123:")]
    [InlineData("t8000")]
    [InlineData("T200000000")]
    [InlineData("tx230")]
    [InlineData("t1232BEE")]
    [InlineData("t1232BEEFE")]
    [InlineData("t1232BEEG")]
    [InlineData("t1232BEEFEA5G")]
    [InlineData("e2a")]
    [InlineData("e1x")]
    [InlineData("sa05703")]
    [InlineData("sx057033")]
    [InlineData("sa05703x")]
    [InlineData("V\u0001")]
    public void What_is_no_line_is_garbled_and_never_a_frame(string line) => Assert.Equal(SerialCanKind.Garbled, Read(line).Kind);

    [Theory]
    [InlineData(10_000, "S0\r")]
    [InlineData(500_000, "S6\r")]
    [InlineData(1_000_000, "S8\r")]
    public void Bit_rates_have_the_driver_s_numbers(int rate, string command) => Assert.Equal(command, Encoding.ASCII.GetString(SerialCanText.Speed(rate)));

    [Fact]
    public void A_rate_without_a_number_and_a_frame_without_a_form_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SerialCanText.Speed(400_000));
        Assert.Throws<ArgumentException>(() => SerialCanText.Write(CanFrame.Parse("123##1AA")));
    }

    [Fact]
    public void What_is_written_is_read() => Frames.Classical.Sample(frame => Assert.Equal(frame, Read(Encoding.ASCII.GetString(SerialCanText.Write(frame))[..^1]).Frame));

    private static SerialCanLine Read(string line) => SerialCanText.Read(Encoding.Latin1.GetBytes(line), endsWithBell: false);
}
