using System.Text;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Judging;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Vehicle identification numbers as units pad them; a number shortened in silence would pass for another vehicle's.</summary>
public class TextReadingTests
{
    private const string Vin = "TESTVXN06AA000010";

    [Theory, Trait("case", "OBD-02")]
    [InlineData(24, "00000000000000")]
    [InlineData(17, "")]
    public void Padding_behind_a_text_is_dropped_and_its_last_zero_is_kept(int length, string padding)
    {
        byte[] record = [.. Encoding.ASCII.GetBytes(Vin), .. Convert.FromHexString(padding)];
        Assert.Equal(Vin, FormCodec.Decode(Describe.Text(length), null, record).Value!.ToString());
    }

    [Fact, Trait("case", "OBD-02")]
    public void An_illegal_byte_inside_a_text_is_no_text()
    {
        byte[] record = [.. Encoding.ASCII.GetBytes("TESTVXN0"), 0x00, .. Encoding.ASCII.GetBytes("6AA000010")];
        var (value, missing, detail) = FormCodec.Decode(Describe.Text(18), null, record);
        Assert.Equal((null, MissingCause.InvalidMarker, "illegal byte 00 in a text, at place 9"), (value, missing, detail));
    }

    [Fact]
    public void A_text_with_a_padding_of_its_own_takes_no_other()
    {
        Assert.Equal("AB", FormCodec.Decode(Describe.Text(4, padding: 0x20), null, "AB  "u8).Value!.ToString());
        Assert.Equal("illegal byte 00 in a text, at place 3", FormCodec.Decode(Describe.Text(4, padding: 0x20), null, "AB\0\0"u8).Detail);
    }

    [Fact]
    public void A_segmented_identification_number_is_read_whole_and_without_its_padding()
    {
        // 62 F1 90 and 17 characters: first frame with three of them, then seven in each of two frames.
        var bench = new BusBench();
        bench.Bus.When("710#0322F190", 3, "718#101462F190544553").When("710#30", 1, "718#215456584E303641", "718#2241303030303130");
        Assert.Equal(Vin, bench.Read(Describe.Data("gateway", 0xF190, Describe.Text(17, padding: 0x20))).Value!.ToString());
    }
}
