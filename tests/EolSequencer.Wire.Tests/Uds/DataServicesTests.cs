using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Uds;

// Reading, writing, adjusting, routines: where most steps of a sequence get their values.
// Bytes agree with python-udsoncan (run), most with scapy 2.5.0 and tshark 4.0.17.
public class DataServicesTests
{
    private const string Ones17 = "3131313131313131313131313131313131";

    [Fact]
    public void A_record_stands_behind_its_identifier()
    {
        Assert.Equal(Text.Bytes("22F190"), ReadDataByIdentifier.MakeRequest(0xF190));
        var response = Text.Bytes("62F190" + Ones17);
        Assert.Equal(Ones17, Text.Hex(ReadDataByIdentifier.ReadResponse(response, 0xF190).Value));
        Assert.Equal(response, ReadDataByIdentifier.MakeResponse(0xF190, Text.Bytes(Ones17)));
    }

    [Fact]
    public void Two_identifiers_go_into_one_request()
    {
        var request = ReadDataByIdentifier.MakeRequest(0xF190, 0xF18C);
        Assert.Equal(Text.Bytes("22F190F18C"), request);
        Assert.True(ReadDataByIdentifier.TryReadRequest(request, out var count));
        Assert.Equal(2, count);
        Assert.Equal(0xF18C, ReadDataByIdentifier.IdentifierAt(request, 1));

        var response = ReadDataByIdentifier.Append(ReadDataByIdentifier.MakeResponse(0xF190, [1, 2]), 0xF18C, [3]);
        var records = ReadDataByIdentifier.ReadResponse(response, new(0xF190, 2), new(0xF18C, 1)).Value;
        Assert.Equal(["0102", "03"], records.Select(record => Text.Hex(record)));
    }

    [Theory]
    [InlineData("62F190", "short answer at data identifier F190 (2 of 4 bytes)")]
    [InlineData("62F1900102F18C", "short answer at data identifier F18C (2 of 3 bytes)")]
    [InlineData("62F1900102F18D03", "data identifier F18D instead of F18C")]
    [InlineData("62F1900102F18C0304", "1 bytes too many")]
    [InlineData("7F2231", "no positive response of ReadDataByIdentifier")]
    [InlineData("", "no positive response of ReadDataByIdentifier")]
    public void Records_that_are_not_what_was_asked_for_are_told(string response, string fault) =>
        Assert.Equal(fault, ReadDataByIdentifier.ReadResponse(Text.Bytes(response), new(0xF190, 2), new(0xF18C, 1)).Fault);

    [Theory]
    [InlineData("22")]
    [InlineData("22F1")]
    [InlineData("22F190F1")]
    [InlineData("2EF190")]
    public void A_read_request_of_another_length_is_refused(string request) =>
        Assert.False(ReadDataByIdentifier.TryReadRequest(Text.Bytes(request), out _));

    [Fact]
    public void Memory_is_read_with_widths_of_its_own()
    {
        var what = new ReadMemoryByAddress.Request(0x2000_0000, 16);
        Assert.Equal(Text.Bytes("23142000000010"), ReadMemoryByAddress.MakeRequest(what, addressBytes: 4, sizeBytes: 1));
        Assert.True(ReadMemoryByAddress.TryReadRequest(Text.Bytes("23142000000010"), out var request));
        Assert.Equal(what, request);
        Assert.Equal("0102", Text.Hex(ReadMemoryByAddress.ReadResponse(ReadMemoryByAddress.MakeResponse([1, 2]), 2).Value));
        Assert.Equal("short answer (2 of 3 bytes)", ReadMemoryByAddress.ReadResponse(Text.Bytes("6301"), 2).Fault);
        Assert.Equal("1 bytes too many", ReadMemoryByAddress.ReadResponse(Text.Bytes("63010203"), 2).Fault);
    }

    [Theory]
    [InlineData("2314200000001000")]
    [InlineData("231420000000")]
    [InlineData("230420000000")]
    [InlineData("231010")]
    [InlineData("23")]
    public void A_memory_request_that_does_not_go_with_its_format_byte_is_refused(string request) =>
        Assert.False(ReadMemoryByAddress.TryReadRequest(Text.Bytes(request), out _));

    [Fact]
    public void A_number_too_wide_for_its_field_is_not_cut_off() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReadMemoryByAddress.MakeRequest(new(0x1_0000, 1), addressBytes: 2, sizeBytes: 1));

    [Fact]
    public void A_write_is_confirmed_by_its_identifier()
    {
        Assert.Equal(Text.Bytes("2EF190" + Ones17), WriteDataByIdentifier.MakeRequest(0xF190, Text.Bytes(Ones17)));
        Assert.Equal(Text.Bytes("6EF190"), WriteDataByIdentifier.MakeResponse(0xF190));
        Assert.True(WriteDataByIdentifier.TryReadRequest(Text.Bytes("2EF1A501"), out var request));
        Assert.Equal((0xF1A5, "01"), (request.Identifier, Text.Hex(request.Record)));
        Assert.False(WriteDataByIdentifier.TryReadRequest(Text.Bytes("2EF1A5"), out _));
    }

    [Fact]
    public void An_adjustment_gives_back_the_state_really_taken()
    {
        Assert.Equal(Text.Bytes("2F9B00033C"), InputOutputControl.MakeRequest(0x9B00, ControlParameter.ShortTermAdjustment, [0x3C]));
        Assert.Equal("0C", Text.Hex(InputOutputControl.ReadResponse(Text.Bytes("6F9B00030C")).Value));
        Assert.Equal(Text.Bytes("6F9B00030C"), InputOutputControl.MakeResponse(0x9B00, ControlParameter.ShortTermAdjustment, [0x0C]));
        Assert.True(InputOutputControl.TryReadRequest(Text.Bytes("2F9B0000"), out var request));
        Assert.Equal((0x9B00, ControlParameter.ReturnControl, true), (request.Identifier, request.Parameter, request.State.IsEmpty));
        Assert.False(InputOutputControl.TryReadRequest(Text.Bytes("2F9B00"), out _));
    }

    [Fact]
    public void A_routine_is_started_and_asked_for_its_results()
    {
        Assert.Equal(Text.Bytes("3101FF00"), RoutineControl.MakeRequest(RoutineControl.Act.Start, 0xFF00));
        Assert.Equal(Text.Bytes("3103FF00"), RoutineControl.MakeRequest(RoutineControl.Act.RequestResults, 0xFF00));
        Assert.Equal(Text.Bytes("3181FF00"), RoutineControl.MakeRequest(RoutineControl.Act.Start, 0xFF00, suppressPositive: true));
        Assert.Equal("00", Text.Hex(RoutineControl.ReadResponse(Text.Bytes("7101FF0000")).Value));
        Assert.Equal(Text.Bytes("7101FF0000"), RoutineControl.MakeResponse(RoutineControl.Act.Start, 0xFF00, [0]));
        Assert.True(RoutineControl.TryReadRequest(Text.Bytes("3182FF0001"), out var request));
        Assert.Equal((RoutineControl.Act.Stop, 0xFF00, "01", true), (request.Act, request.Identifier, Text.Hex(request.Options), request.SuppressPositive));
        Assert.Equal("short answer (3 of 4 bytes)", RoutineControl.ReadResponse(Text.Bytes("7101FF")).Fault);
    }

    [Fact]
    public void A_seed_is_answered_with_the_key_of_the_same_level()
    {
        Assert.Equal(Text.Bytes("2701"), SecurityAccess.MakeSeedRequest(1));
        Assert.Equal(Text.Bytes("2702C9A90000"), SecurityAccess.MakeKeyRequest(1, Text.Bytes("C9A90000")));
        Assert.Equal("36571122", Text.Hex(SecurityAccess.ReadSeed(Text.Bytes("670136571122")).Value));
        Assert.Equal(Text.Bytes("670136571122"), SecurityAccess.MakeSeedResponse(1, Text.Bytes("36571122")));
        Assert.Equal(Text.Bytes("6702"), SecurityAccess.MakeKeyResponse(1));
        Assert.True(SecurityAccess.TryReadRequest(Text.Bytes("2704AB"), out var key));
        Assert.Equal((3, true, "AB"), (key.Level, key.IsKey, Text.Hex(key.Data)));
        Assert.True(SecurityAccess.TryReadRequest(Text.Bytes("2703"), out var seed));
        Assert.Equal((3, false), (seed.Level, seed.IsKey));
        Assert.False(SecurityAccess.TryReadRequest(Text.Bytes("2704"), out _));
        Assert.False(SecurityAccess.TryReadRequest(Text.Bytes("2700"), out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => SecurityAccess.MakeSeedRequest(2));
    }

    [Theory, Trait("case", "UDS-05")]
    [InlineData("670100000000", true)]
    [InlineData("670100000001", false)]
    public void A_seed_of_zeros_means_that_the_level_is_open(string response, bool isUnlocked) =>
        Assert.Equal(isUnlocked, SecurityAccess.IsUnlocked(SecurityAccess.ReadSeed(Text.Bytes(response)).Value.Span));

    [Fact]
    public void A_response_without_a_seed_does_not_mean_that_the_level_is_open()
    {
        Assert.Equal("short answer (2 of 3 bytes)", SecurityAccess.ReadSeed(Text.Bytes("6701")).Fault);
        Assert.False(SecurityAccess.IsUnlocked([]));
    }

    [Fact]
    public void All_groups_are_cleared_by_default()
    {
        Assert.Equal(Text.Bytes("14FFFFFF"), ClearDiagnosticInformation.MakeRequest());
        Assert.Equal(Text.Bytes("54"), ClearDiagnosticInformation.MakeResponse());
        Assert.True(ClearDiagnosticInformation.TryReadRequest(Text.Bytes("14012345"), out var group));
        Assert.Equal(0x012345, group);
        Assert.False(ClearDiagnosticInformation.TryReadRequest(Text.Bytes("14FFFF"), out _));
    }
}
