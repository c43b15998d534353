using EolSequencer.Wire.Obd;
using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Wire.Tests.Obd;

// Over CAN a count stands before the codes; taken for data it shifts every one of them.
// Bytes agree with scapy 2.5.0 (its OBD test suite, run).
public class EmissionsCodesTests
{
    [Theory]
    [InlineData(ObdService.StoredCodes, "430201330300", "P0133 P0300")]
    [InlineData(ObdService.StoredCodes, "4300", "")]
    [InlineData(ObdService.StoredCodes, "43060143019602" + "3402CD03570A24", "P0143 P0196 P0234 P02CD P0357 P0A24")]
    [InlineData(ObdService.PendingCodes, "4701C100", "U0100")]
    [InlineData(ObdService.PermanentCodes, "4A014035", "C0035")]
    public void Codes_stand_behind_their_count(ObdService service, string message, string codes)
    {
        var read = EmissionsCodes.ReadResponse(Text.Bytes(message), service).Value;
        Assert.Equal(codes, string.Join(' ', read));
        Assert.Equal(Text.Bytes(message), EmissionsCodes.MakeResponse(service, read));
    }

    [Theory, Trait("case", "OBD-03")]
    [InlineData("4302010104200000", "P0101 P0420")]
    [InlineData("4300000000000000", "")]
    [InlineData("430201010000", "P0101")]
    public void Zeros_are_filling_and_no_codes(string message, string codes) =>
        Assert.Equal(codes, string.Join(' ', EmissionsCodes.ReadResponse(Text.Bytes(message), ObdService.StoredCodes).Value));

    [Theory, Trait("case", "OBD-03")]
    [InlineData("43020101", "short answer (1 of 2 codes)")]
    [InlineData("4302010104", "short answer (1 of 2 codes)")]
    [InlineData("43", "short answer (1 of 2 bytes)")]
    [InlineData("4301010104", "bytes behind the 1 codes that were counted")]
    [InlineData("470101", "no positive response of StoredCodes")]
    public void A_count_that_does_not_go_with_the_bytes_is_a_fault(string message, string fault) =>
        Assert.Equal(fault, EmissionsCodes.ReadResponse(Text.Bytes(message), ObdService.StoredCodes).Fault);

    [Fact]
    public void A_failure_type_does_not_go_out_on_these_services() =>
        Assert.Equal(Text.Bytes("43010420"), EmissionsCodes.MakeResponse(ObdService.StoredCodes, [new TroubleCode(0x0420, 0x16)]));

    [Fact]
    public void Requests_are_a_single_byte()
    {
        Assert.Equal([0x03], EmissionsCodes.MakeRequest(ObdService.StoredCodes));
        Assert.Equal([0x04], EmissionsCodes.MakeRequest(ObdService.ClearCodes));
        Assert.Equal([0x44], EmissionsCodes.MakeClearResponse());
        Assert.True(EmissionsCodes.TryReadRequest([0x07], out var service));
        Assert.Equal(ObdService.PendingCodes, service);
        Assert.False(EmissionsCodes.TryReadRequest([0x01], out _));
        Assert.False(EmissionsCodes.TryReadRequest([0x03, 0x00], out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmissionsCodes.MakeRequest(ObdService.CurrentData));
    }
}
