using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Uds;

// People look a refusal up by its number and its name. Names: ISO 14229-1, annex A.1, as in python-udsoncan
// (ResponseCode) and scapy 2.5.0 (contrib/automotive/uds.py).
public class NegativeResponseTests
{
    [Theory]
    [InlineData(0x10, "10 generalReject")]
    [InlineData(0x13, "13 incorrectMessageLengthOrInvalidFormat")]
    [InlineData(0x21, "21 busyRepeatRequest")]
    [InlineData(0x31, "31 requestOutOfRange")]
    [InlineData(0x33, "33 securityAccessDenied")]
    [InlineData(0x35, "35 invalidKey")]
    [InlineData(0x36, "36 exceedNumberOfAttempts")]
    [InlineData(0x37, "37 requiredTimeDelayNotExpired")]
    [InlineData(0x78, "78 requestCorrectlyReceived-ResponsePending")]
    [InlineData(0x7E, "7E subFunctionNotSupportedInActiveSession")]
    [InlineData(0x7F, "7F serviceNotSupportedInActiveSession")]
    [InlineData(0x93, "93 voltageTooLow")]
    [InlineData(0x99, "99")]
    public void A_code_has_its_number_and_its_name(byte code, string text) =>
        Assert.Equal(text, NegativeResponse.Describe((NegativeCode)code));

    [Fact]
    public void A_refusal_names_the_service() =>
        Assert.Equal(Text.Bytes("7F2231"), NegativeResponse.Make(0x22, NegativeCode.RequestOutOfRange));

    // ISO 14229-1: in a group, a control unit that lacks the item says nothing.
    [Fact]
    public void What_a_unit_lacks_is_silence_in_a_group()
    {
        var silent = Enum.GetValues<NegativeCode>().Where(NegativeResponse.IsSilentInGroup).Select(code => (int)code);
        Assert.Equal([0x11, 0x12, 0x31, 0x7E, 0x7F], silent);
    }
}
