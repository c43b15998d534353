using EolSequencer.Wire.TroubleCodes;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Uds;

// A code read wrong sends a good vehicle to repair, or a bad one to the customer.
// Bytes agree with python-udsoncan and scapy 2.5.0 (run) and with the dissection of tshark 4.0.17.
public class ReadDtcInformationTests
{
    private static readonly StoredCode Stored = new(
        new TroubleCode(0x0123, 0x45),
        TroubleCodeStatus.TestFailed | TroubleCodeStatus.TestFailedThisOperationCycle | TroubleCodeStatus.Pending |
        TroubleCodeStatus.Confirmed | TroubleCodeStatus.TestFailedSinceLastClear);

    [Fact]
    public void Codes_are_counted_by_status()
    {
        Assert.Equal(Text.Bytes("1901FF"), ReadDtcInformation.MakeNumberRequest((TroubleCodeStatus)0xFF));
        var number = new ReadDtcInformation.Number((TroubleCodeStatus)0xFF, TroubleCodeFormat.Iso14229, 3);
        Assert.Equal(number, ReadDtcInformation.ReadNumber(Text.Bytes("5901FF010003")).Value);
        Assert.Equal(Text.Bytes("5901FF010003"), ReadDtcInformation.MakeNumberResponse(number));
        Assert.Equal("short answer (5 of 6 bytes)", ReadDtcInformation.ReadNumber(Text.Bytes("5901FF0100")).Fault);
    }

    [Fact]
    public void Codes_are_listed_with_their_status()
    {
        Assert.Equal(Text.Bytes("190208"), ReadDtcInformation.MakeListRequest(TroubleCodeStatus.Confirmed));
        var list = ReadDtcInformation.ReadList(Text.Bytes("59027F0123452F")).Value;
        Assert.Equal((TroubleCodeStatus)0x7F, list.Availability);
        Assert.Equal([Stored], list.Entries);
        Assert.Equal(
            Text.Bytes("59027F0123452F"),
            ReadDtcInformation.MakeListResponse(ReadDtcInformation.Report.CodesByStatusMask, (TroubleCodeStatus)0x7F, [Stored]));
    }

    [Fact]
    public void No_code_at_all_is_a_right_answer() =>
        Assert.Empty(ReadDtcInformation.ReadList(Text.Bytes("5902FF")).Value.Entries);

    [Theory]
    [InlineData("59027F012345", "short answer (the last of 1 codes has 3 of 4 bytes)")]
    [InlineData("59027F0123452F01", "short answer (the last of 2 codes has 1 of 4 bytes)")]
    [InlineData("5902", "short answer (2 of 3 bytes)")]
    public void A_truncated_list_is_no_list(string response, string fault) =>
        Assert.Equal(fault, ReadDtcInformation.ReadList(Text.Bytes(response)).Fault);

    [Fact]
    public void Supported_codes_come_as_a_list_too()
    {
        Assert.Equal(Text.Bytes("190A"), ReadDtcInformation.MakeSupportedRequest());
        Assert.Equal([Stored], ReadDtcInformation.ReadList(Text.Bytes("590A7F0123452F")).Value.Entries);
    }

    [Fact]
    public void What_is_stored_with_a_code_is_asked_for_by_code()
    {
        var request = ReadDtcInformation.MakeDetailRequest(ReadDtcInformation.Report.ExtendedDataByCode, Stored.Code, record: 1);
        Assert.Equal(Text.Bytes("190601234501"), request);
        var detail = ReadDtcInformation.ReadDetail(Text.Bytes("5906012345200105")).Value;
        Assert.Equal(Stored with { Status = TroubleCodeStatus.TestFailedSinceLastClear }, detail.Entry);
        Assert.Equal("0105", Text.Hex(detail.Records));
        Assert.Equal(
            Text.Bytes("5906012345200105"),
            ReadDtcInformation.MakeDetailResponse(ReadDtcInformation.Report.ExtendedDataByCode, detail.Entry, [0x01, 0x05]));
    }

    [Fact]
    public void A_request_reads_back_as_it_was_made()
    {
        Assert.True(ReadDtcInformation.TryReadRequest(Text.Bytes("190401234502"), out var request, out _));
        Assert.Equal(new ReadDtcInformation.Request(ReadDtcInformation.Report.SnapshotByCode, 0, Stored.Code, 2, SuppressPositive: false), request);
        Assert.True(ReadDtcInformation.TryReadRequest(Text.Bytes("198208"), out request, out _));
        Assert.Equal(new ReadDtcInformation.Request(ReadDtcInformation.Report.CodesByStatusMask, TroubleCodeStatus.Confirmed, default, 0, SuppressPositive: true), request);
    }

    [Theory]
    [InlineData("19", NegativeCode.IncorrectMessageLengthOrInvalidFormat)]
    [InlineData("1902", NegativeCode.IncorrectMessageLengthOrInvalidFormat)]
    [InlineData("190A00", NegativeCode.IncorrectMessageLengthOrInvalidFormat)]
    [InlineData("197E", NegativeCode.SubFunctionNotSupported)]
    public void A_wrong_request_is_refused_for_its_reason(string message, NegativeCode code)
    {
        Assert.False(ReadDtcInformation.TryReadRequest(Text.Bytes(message), out _, out var refusal));
        Assert.Equal(code, refusal);
    }
}
