using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Uds;

// An answer that goes to the wrong request is a measured value of another quantity.
// Source of the repeated bytes: ISO 14229-1, response message definitions; codes as in python-udsoncan and scapy 2.5.0.
public class ResponseMatchTests
{
    [Theory]
    [InlineData("22F190", "62F19031")]
    [InlineData("22F190F18C", "62F19031")]
    [InlineData("1003", "5003003201F4")]
    [InlineData("1083", "5003003201F4")]
    [InlineData("3E00", "7E00")]
    [InlineData("14FFFFFF", "54")]
    [InlineData("190208", "5902FF")]
    [InlineData("190601234501", "5906012345200105")]
    [InlineData("2F9B00033C", "6F9B00030C")]
    [InlineData("3101FF00", "7101FF0000")]
    [InlineData("3181FF00", "7101FF0000")]
    [InlineData("2EF1A501", "6EF1A5")]
    [InlineData("2701", "670136571122")]
    [InlineData("280301", "6803")]
    [InlineData("8502", "C502")]
    [InlineData("3601AABB", "7601")]
    [InlineData("37", "77")]
    [InlineData("23142000000010", "63")]
    public void A_positive_response_repeats_what_was_asked(string request, string message) =>
        Assert.Equal(new Answer(AnswerKind.Positive), ResponseMatch.Of(Text.Bytes(request), Text.Bytes(message)));

    [Theory, Trait("case", "UDS-04")]
    [InlineData("22F1A1", "62F1A005")]
    [InlineData("22F1A1", "62F1")]
    [InlineData("22F1A1", "62")]
    [InlineData("22F1A1", "")]
    [InlineData("22F1A1", "6EF1A1")]
    [InlineData("1003", "5001003201F4")]
    [InlineData("3101FF00", "7103FF0000")]
    [InlineData("3101FF00", "7101FF0100")]
    [InlineData("2F9B00033C", "6F9B00003C")]
    [InlineData("190601234501", "5906012346200105")]
    [InlineData("190208", "5901FF010003")]
    [InlineData("22F1A1", "22F1A1")]
    public void Whatever_repeats_something_else_is_a_stray(string request, string message) =>
        Assert.Equal(default, ResponseMatch.Of(Text.Bytes(request), Text.Bytes(message)));

    [Theory, Trait("case", "UDS-05")]
    [InlineData("2701", "670000000000")]
    [InlineData("2701", "670200000000")]
    public void A_seed_of_another_level_is_never_taken(string request, string message) =>
        Assert.Equal(AnswerKind.Stray, ResponseMatch.Of(Text.Bytes(request), Text.Bytes(message)).Kind);

    [Theory, Trait("case", "UDS-06")]
    [InlineData("7F2E21", AnswerKind.Busy, NegativeCode.BusyRepeatRequest)]
    [InlineData("7F2E78", AnswerKind.Pending, NegativeCode.RequestCorrectlyReceivedResponsePending)]
    [InlineData("7F2E31", AnswerKind.Negative, NegativeCode.RequestOutOfRange)]
    [InlineData("7F2E99", AnswerKind.Negative, (NegativeCode)0x99)]
    [InlineData("7F2221", AnswerKind.Stray, NegativeCode.None)]
    [InlineData("7F2278", AnswerKind.Stray, NegativeCode.None)]
    [InlineData("7F2E", AnswerKind.Stray, NegativeCode.None)]
    [InlineData("7F", AnswerKind.Stray, NegativeCode.None)]
    public void A_refusal_counts_for_its_own_service_only(string message, AnswerKind kind, NegativeCode code) =>
        Assert.Equal(new Answer(kind, code), ResponseMatch.Of(Text.Bytes("2EF1A501"), Text.Bytes(message)));

    // Request 31, "response pending", then the result: one request, the second message answers it.
    [Fact]
    public void Response_pending_is_no_answer()
    {
        var request = Text.Bytes("3101FF00");
        Assert.Equal(AnswerKind.Pending, ResponseMatch.Of(request, Text.Bytes("7F3178")).Kind);
        Assert.Equal(AnswerKind.Positive, ResponseMatch.Of(request, Text.Bytes("7101FF0000")).Kind);
    }
}
