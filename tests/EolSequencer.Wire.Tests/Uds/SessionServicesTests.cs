using EolSequencer.Wire.Uds;

namespace EolSequencer.Wire.Tests.Uds;

// Session, reset, tester present, communication and storing control: the services that set the scene of a test.
// Bytes agree with python-udsoncan and scapy 2.5.0 (run) and with the dissection of tshark 4.0.17.
public class SessionServicesTests
{
    [Theory, Trait("case", "UDS-02")]
    [InlineData("5001003201F4", DiagnosticSession.Default, 50, 5000)]
    [InlineData("50030019012C", DiagnosticSession.Extended, 25, 3000)]
    public void P2_counts_milliseconds_and_P2_star_tens_of_them(string bytes, DiagnosticSession session, int p2, int p2Star)
    {
        var timing = new SessionTiming(TimeSpan.FromMilliseconds(p2), TimeSpan.FromMilliseconds(p2Star));
        Assert.Equal(new DiagnosticSessionControl.Response(session, timing), DiagnosticSessionControl.ReadResponse(Text.Bytes(bytes)).Value);
        Assert.Equal(Text.Bytes(bytes), DiagnosticSessionControl.MakeResponse(session, timing));
    }

    // ISO 14229-1:2013: the timing belongs to the response.
    [Fact]
    public void A_session_response_without_timing_is_a_short_answer() =>
        Assert.Equal("short answer (2 of 6 bytes)", DiagnosticSessionControl.ReadResponse(Text.Bytes("5001")).Fault);

    [Fact]
    public void Bit_7_of_the_sub_function_suppresses_the_positive_response()
    {
        Assert.Equal(Text.Bytes("1083"), DiagnosticSessionControl.MakeRequest(DiagnosticSession.Extended, suppressPositive: true));
        Assert.True(DiagnosticSessionControl.TryReadRequest(Text.Bytes("1083"), out var request));
        Assert.Equal(new DiagnosticSessionControl.Request(DiagnosticSession.Extended, SuppressPositive: true), request);
        Assert.True(SubFunction.IsPositiveSuppressed(Text.Bytes("3E80")));
        Assert.True(SubFunction.IsPositiveSuppressed(Text.Bytes("3181FF00")));
        Assert.False(SubFunction.IsPositiveSuppressed(Text.Bytes("3E00")));
        Assert.False(SubFunction.IsPositiveSuppressed(Text.Bytes("22F190")));
        Assert.False(SubFunction.IsPositiveSuppressed(Text.Bytes("2F9B00")));
        Assert.False(SubFunction.IsPositiveSuppressed(Text.Bytes("3E")));
    }

    [Fact]
    public void Tester_present_is_its_own_echo()
    {
        Assert.Equal(Text.Bytes("3E00"), TesterPresent.MakeRequest());
        Assert.Equal(Text.Bytes("3E80"), TesterPresent.MakeRequest(suppressPositive: true));
        Assert.Equal(Text.Bytes("7E00"), TesterPresent.MakeResponse());
        Assert.True(TesterPresent.TryReadRequest(Text.Bytes("3E81"), out var subFunction));
        Assert.Equal(1, subFunction);
        Assert.False(TesterPresent.TryReadRequest(Text.Bytes("3E"), out _));
    }

    [Fact]
    public void A_reset_tells_the_power_down_time_where_there_is_one()
    {
        Assert.Equal(Text.Bytes("1101"), EcuReset.MakeRequest(ResetKind.Hard));
        Assert.Equal(new EcuReset.Response(ResetKind.Hard, null), EcuReset.ReadResponse(Text.Bytes("5101")).Value);
        Assert.Equal(new EcuReset.Response(ResetKind.EnableRapidPowerShutDown, 10), EcuReset.ReadResponse(Text.Bytes("51040A")).Value);
        Assert.Equal("short answer (2 of 3 bytes)", EcuReset.ReadResponse(Text.Bytes("5104")).Fault);
        Assert.Equal(Text.Bytes("51040A"), EcuReset.MakeResponse(ResetKind.EnableRapidPowerShutDown, 10));
        Assert.Equal(Text.Bytes("5103"), EcuReset.MakeResponse(ResetKind.Soft));
        Assert.True(EcuReset.TryReadRequest(Text.Bytes("1183"), out var request));
        Assert.Equal(new EcuReset.Request(ResetKind.Soft, SuppressPositive: true), request);
    }

    [Fact]
    public void Communication_and_storing_are_switched_off_and_on()
    {
        Assert.Equal(Text.Bytes("280301"), CommunicationControl.MakeRequest(CommunicationControl.Control.DisableBoth, CommunicationControl.Messages.Normal));
        Assert.Equal(Text.Bytes("6803"), CommunicationControl.MakeResponse(CommunicationControl.Control.DisableBoth));
        Assert.True(CommunicationControl.TryReadRequest(Text.Bytes("2883F3"), out var control));
        Assert.Equal(new CommunicationControl.Request(
            CommunicationControl.Control.DisableBoth,
            CommunicationControl.Messages.Normal | CommunicationControl.Messages.NetworkManagement,
            Network: 15,
            SuppressPositive: true), control);
        Assert.False(CommunicationControl.TryReadRequest(Text.Bytes("2803"), out _));

        Assert.Equal(Text.Bytes("8502"), ControlDtcSetting.MakeRequest(ControlDtcSetting.Setting.Off));
        Assert.Equal(Text.Bytes("C502"), ControlDtcSetting.MakeResponse(ControlDtcSetting.Setting.Off));
        Assert.True(ControlDtcSetting.TryReadRequest(Text.Bytes("8581FFFFFF"), out var setting));
        Assert.Equal(ControlDtcSetting.Setting.On, setting.Setting);
        Assert.True(setting.SuppressPositive);
        Assert.Equal("FFFFFF", Text.Hex(setting.Record));
    }
}
