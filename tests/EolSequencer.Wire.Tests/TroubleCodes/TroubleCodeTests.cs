using CsCheck;
using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Wire.Tests.TroubleCodes;

// The text of a code is what repair looks up. Source: SAE J2012 and ISO 15031-6; values agree with the test suite of
// python-OBD (tests/test_decoders.py), with scapy 2.5.0 (run) and with published examples of three-byte codes.
public class TroubleCodeTests
{
    [Theory]
    [InlineData(0x0301, "P0301")]
    [InlineData(0xC100, "U0100")]
    [InlineData(0x4035, "C0035")]
    [InlineData(0x9342, "B1342")]
    [InlineData(0x0104, "P0104")]
    [InlineData(0x4123, "C0123")]
    [InlineData(0x8003, "B0003")]
    [InlineData(0x0A80, "P0A80")]
    [InlineData(0xD123, "U1123")]
    [InlineData(0x3FFF, "P3FFF")]
    [InlineData(0x0143, "P0143")]
    public void Two_bytes_are_a_letter_and_four_digits(int bytes, string text)
    {
        var code = new TroubleCode((ushort)bytes);
        Assert.Equal(text, code.ToString());
        Assert.True(TroubleCode.TryParse(text, out var parsed));
        Assert.Equal(code, parsed);
    }

    [Theory]
    [InlineData(0x0127, 0x00, "P0127-00")]
    [InlineData(0x8039, 0x10, "B0039-10")]
    [InlineData(0x4031, 0x23, "C0031-23")]
    [InlineData(0xC073, 0x04, "U0073-04")]
    [InlineData(0x9000, 0x16, "B1000-16")]
    public void A_third_byte_is_the_failure_type(int bytes, int type, string text)
    {
        var code = new TroubleCode((ushort)bytes, (byte)type);
        Assert.Equal(text, code.ToString());
        Assert.Equal(text[..5], code.BaseText);
        Assert.True(TroubleCode.TryParse(text, out var parsed));
        Assert.Equal(code, parsed);
    }

    [Fact]
    public void Every_code_reads_back_from_its_text() =>
        Gen.Select(Gen.UShort, Gen.Byte, Gen.Bool).Sample((bytes, type, isLong) =>
        {
            var code = new TroubleCode(bytes, isLong ? type : null);
            Assert.True(TroubleCode.TryParse(code.ToString(), out var parsed));
            Assert.Equal(code, parsed);
        });

    [Theory]
    [InlineData("")]
    [InlineData("P030")]
    [InlineData("X0301")]
    [InlineData("P4301")]
    [InlineData("P03G1")]
    [InlineData("P0301-")]
    [InlineData("P0301 00")]
    [InlineData("P0301-0G")]
    [InlineData("P+301")]
    public void What_is_no_code_is_refused(string text) => Assert.False(TroubleCode.TryParse(text, out _));

    [Fact]
    public void Zeros_fill_lists_up_and_are_no_code()
    {
        Assert.True(new TroubleCode(0).IsFiller);
        Assert.True(new TroubleCode(0, 0).IsFiller);
        Assert.False(new TroubleCode(0, 1).IsFiller);
        Assert.False(new TroubleCode(0x0100).IsFiller);
    }

    // ISO 14229-1, annex D.2; the names of python-udsoncan stand in the same order.
    [Fact]
    public void Status_2F_has_five_bits() =>
        Assert.Equal(
            TroubleCodeStatus.TestFailed | TroubleCodeStatus.TestFailedThisOperationCycle | TroubleCodeStatus.Pending |
            TroubleCodeStatus.Confirmed | TroubleCodeStatus.TestFailedSinceLastClear,
            (TroubleCodeStatus)0x2F);
}
