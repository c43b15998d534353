using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Tests.Obd;

// Several parameters in one answer have no lengths on the bus: one wrong step shifts all that follow.
// Bytes agree with scapy 2.5.0 (its OBD test suite, run).
public class DataMessagesTests
{
    [Fact]
    public void Two_parameters_come_in_one_answer()
    {
        Assert.Equal(Text.Bytes("010C0D"), CurrentData.MakeRequest(0x0C, 0x0D));
        var answer = CurrentData.ReadResponse(Text.Bytes("410C1AF80D32")).Value;
        Assert.Equal([(0x0C, "1AF8"), (0x0D, "32")], answer.Select(p => ((int)p.Id, Text.Hex(p.Data))));
        Assert.Equal(Text.Bytes("410C1AF80D32"), CurrentData.MakeResponse([.. answer]));
    }

    [Fact]
    public void Parameters_of_different_lengths_stand_in_a_row()
    {
        var answer = CurrentData.ReadResponse(Text.Bytes("41056E018333FF6315A0780C0A6B")).Value;
        Assert.Equal([0x05, 0x01, 0x15, 0x0C], answer.Select(p => (int)p.Id));
        Assert.Equal(70m, ValueOf(answer[0]));
        Assert.Equal(666.75m, ValueOf(answer[3]));
    }

    [Fact]
    public void Bitmaps_come_together_too()
    {
        var answer = CurrentData.ReadResponse(Text.Bytes("4100BFBFA8912080000000")).Value;
        Assert.Equal([(0x00, "BFBFA891"), (0x20, "80000000")], answer.Select(p => ((int)p.Id, Text.Hex(p.Data))));
    }

    [Theory, Trait("case", "OBD-06")]
    [InlineData("410C1A", "short answer (1 of 2 bytes)")]
    [InlineData("410C", "short answer (0 of 2 bytes)")]
    [InlineData("410D320C1A", "short answer (1 of 2 bytes)")]
    [InlineData("4154FFFF", "its length is not known")]
    [InlineData("420C1AF8", "no positive response of CurrentData")]
    [InlineData("", "no positive response of CurrentData")]
    public void A_short_answer_is_never_filled_up(string message, string fault) =>
        Assert.Contains(fault, CurrentData.ReadResponse(Text.Bytes(message)).Fault, StringComparison.Ordinal);

    [Fact, Trait("case", "OBD-04")]
    public void The_value_is_found_behind_service_and_parameter()
    {
        // The payload of frame 7E9: 03 41 05 5A.
        var answer = CurrentData.ReadResponse(Text.Bytes("41055A")).Value;
        Assert.Equal(50m, ValueOf(answer.Single()));
    }

    [Fact]
    public void A_freeze_frame_repeats_its_number()
    {
        Assert.Equal(Text.Bytes("020C00"), FreezeFrame.MakeRequest(0x0C));
        var answer = FreezeFrame.ReadResponse(Text.Bytes("420C002080")).Value.Single();
        Assert.Equal(2080m, ValueOf(answer));
        Assert.Equal(Text.Bytes("420C002080"), FreezeFrame.MakeResponse(answer, frame: 0));
        Assert.True(FreezeFrame.TryReadRequest(Text.Bytes("020C01"), out var parameter, out var frame));
        Assert.Equal((0x0C, 1), (parameter, frame));
        Assert.Contains("short answer (0 of 2 bytes)", FreezeFrame.ReadResponse(Text.Bytes("420C")).Fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("010C", true)]
    [InlineData("01040506070C0D", true)]
    [InlineData("01040506070C0D0E", false)]
    [InlineData("01", false)]
    [InlineData("020C", false)]
    public void A_request_names_one_to_six_parameters(string message, bool isRight)
    {
        Assert.Equal(isRight, CurrentData.TryReadRequest(Text.Bytes(message), out var parameters));
        Assert.Equal(isRight ? message[2..] : "", Text.Hex(parameters));
    }

    [Fact]
    public void More_than_six_parameters_are_not_asked_for() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CurrentData.MakeRequest(1, 2, 3, 4, 5, 6, 7));

    private static decimal ValueOf(ParameterData parameter)
    {
        Assert.True(ParameterTable.Find(parameter.Id)!.Values[0].TryRead(parameter.Data.Span, out var value));
        return value;
    }
}
