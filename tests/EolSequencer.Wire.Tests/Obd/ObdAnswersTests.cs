using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Obd;
using EolSequencer.Wire.Tests.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Obd;

// One request, several units, answers in any order: none may be taken for another's.
// Source: SAE J1979 and ISO 15765-4 (7DF to all, 7E0 to 7E7 and 7E8 to 7EF in pairs).
public class ObdAnswersTests
{
    [Theory]
    [InlineData("010C", "410C1AF8", AnswerKind.Positive)]
    [InlineData("010C0D", "410D32", AnswerKind.Positive)]
    [InlineData("010C", "410D32", AnswerKind.Stray)]
    [InlineData("010C", "41", AnswerKind.Stray)]
    [InlineData("0902", "490201", AnswerKind.Positive)]
    [InlineData("0902", "490401", AnswerKind.Stray)]
    [InlineData("020C00", "420C002080", AnswerKind.Positive)]
    [InlineData("020C00", "420C012080", AnswerKind.Stray)]
    [InlineData("020C00", "420D002080", AnswerKind.Stray)]
    [InlineData("03", "4300", AnswerKind.Positive)]
    [InlineData("03", "4700", AnswerKind.Stray)]
    [InlineData("04", "44", AnswerKind.Positive)]
    [InlineData("04", "7F0422", AnswerKind.Negative)]
    public void An_answer_repeats_what_was_asked(string request, string message, AnswerKind kind) =>
        Assert.Equal(kind, ResponseMatch.Of(Text.Bytes(request), Text.Bytes(message)).Kind);

    [Fact]
    public void Interleaved_answers_of_two_units_are_put_together_apart()
    {
        var engine = new ReceiverScript(ObdAddresses.Unit(0), Side.Unpadded, "1014490201544553");
        var gearbox = new ReceiverScript(ObdAddresses.Unit(1), Side.Unpadded, "101349040147424F");
        engine.Feed("215456584E303641");
        gearbox.Feed("21582D3030303030");
        engine.Feed("2241303030303137");
        gearbox.Feed("2231000000000000");
        Assert.Equal("TESTVXN06AA000017", VehicleInformation.ReadVehicleNumber(Text.Bytes(engine.Messages.Single())).Value);
        Assert.Equal(["GBOX-000001"], VehicleInformation.ReadCalibrationIds(Text.Bytes(gearbox.Messages.Single())).Value);
        Assert.Equal("7E1", gearbox.Steps[0].Reply!.Value.Id.ToString());
    }

    [Fact]
    public void All_units_share_one_request_identifier()
    {
        var request = new SenderScript(ObdAddresses.All, new TransportOptions { Padding = 0 }, CurrentData.MakeRequest(0x0C));
        Assert.Equal("7DF#02010C0000000000", request.Frames.Single().ToString());
        Assert.Equal(CanId.Base(0x7EF), ObdAddresses.Unit(7).Receive.Id);
        Assert.Throws<ArgumentOutOfRangeException>(() => ObdAddresses.Unit(8));
    }
}
