using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.Tests.Diagnostics;

/// <summary>Messages in the way of an answer, and answers that a link hands over in one go: each request ends, and ends right.</summary>
public class StrayMessageTests
{
    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly ScriptedBus _bus;
    private readonly DiagnosticClient _client;

    public StrayMessageTests()
    {
        _bus = new ScriptedBus(_time);
        var timing = new DiagnosticTiming { P2 = TimeSpan.FromMilliseconds(50), P2Star = TimeSpan.FromMilliseconds(5000), MostPending = 3 };
        _client = new DiagnosticClient("powertrain", new TransportLink(_bus, _time), TransportAddress.Normal(CanId.Base(0x7E0), CanId.Base(0x7E8)), timing);
    }

    private double NowMs => _time.Now.TotalMilliseconds;

    private ExchangeEnd Ask(string request) => _time.Run(() => _client.RequestAsync(Convert.FromHexString(request), default).AsTask());

    [Fact]
    public void A_long_stray_that_spans_the_end_of_P2_gives_the_answer_one_more_P2()
    {
        GiveLongStray(40);
        _bus.Give("7E8#0462F1A109", 130);
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact]
    public void After_a_long_stray_silence_is_still_silence()
    {
        GiveLongStray(40);
        var end = Ask("22F1A1");
        Assert.Equal((MissingCause.Silent, "powertrain: 22F1A1: no answer within P2 (50 ms); 1 x something else, the last 62F1A031313131313131"), (end.Missing, end.Detail));
        Assert.Equal(100 + 50, NowMs, 3);
    }

    [Fact]
    public void Strays_without_end_do_not_hold_a_request_for_ever()
    {
        for (var from = 40; from < 2000; from += 100) GiveLongStray(from);
        Assert.Equal(MissingCause.Silent, Ask("22F1A1").Missing);
        Assert.InRange(NowMs, 300, 600);
    }

    [Fact]
    public void A_message_longer_than_the_tester_takes_ends_the_request_at_once()
    {
        _bus.When("7E0#0322F1A1", 5, "7E8#100000002710F1A1");
        var end = Ask("22F1A1");
        Assert.Equal(MissingCause.ShortAnswer, end.Missing);
        Assert.Contains("N_BUFFER_OVFLW", end.Detail, StringComparison.Ordinal);
        Assert.InRange(NowMs, 5, 10);
        _time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal("7E0#320000CCCCCCCCCC", _bus.Sent[^1].Frame);
    }

    [Fact]
    public void An_answer_right_behind_a_message_that_broke_off_is_taken()
    {
        _bus.When("7E0#0322F1A1", 5, "7E8#101462F1A0313131", "7E8#0462F1A109");
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact]
    public void Pending_and_answer_in_one_go_are_both_taken()
    {
        _bus.GiveTogether(20, "7E8#037F2278", "7E8#0462F1A109");
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact]
    public void Pending_and_the_beginning_of_a_long_answer_in_one_go_are_both_taken()
    {
        _bus.GiveTogether(20, "7E8#037F2278", "7E8#100A62F1A1313131");
        _bus.When("7E0#30", 400, "7E8#2131313131000000");
        Assert.Equal("62F1A131313131313131", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact]
    public void An_answer_reported_before_the_confirmation_of_its_request_is_taken()
    {
        _bus.Queueing = TimeSpan.FromMilliseconds(10);
        _bus.Give("7E8#0462F1A109", 9);
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact]
    public void Pending_reported_before_the_confirmation_does_not_shorten_the_wait()
    {
        _bus.Queueing = TimeSpan.FromMilliseconds(10);
        _bus.Give("7E8#037F2278", 9);
        _bus.Give("7E8#0462F1A109", 58);
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
    }

    [Fact, Trait("case", "UDS-01")]
    public void Pending_for_ever_ends_at_its_bound()
    {
        for (var ms = 40; ms < 60_000; ms += 2000) _bus.Give("7E8#037F2278", ms);
        var end = Ask("22F1A1");
        Assert.Equal((MissingCause.Refused, "powertrain: 22F1A1: 78 requestCorrectlyReceived-ResponsePending, 4 times"), (end.Missing, end.Detail));
        Assert.Equal(6040, NowMs, 3);
    }

    [Fact]
    public void A_refusal_of_a_request_that_is_still_going_out_says_more_than_the_missing_flow_control()
    {
        _bus.When("7E0#1028", 5, "7E8#037F2E33");
        Assert.Equal("powertrain: 2EF190" + new string('0', 74) + ": 33 securityAccessDenied", Ask("2EF190" + new string('0', 74)).Detail);
    }

    [Fact]
    public void Messages_while_nothing_is_asked_are_counted_and_change_nothing()
    {
        _bus.Give("7E8#0462F1A109", 5);
        _time.Advance(TimeSpan.FromMilliseconds(10));
        Assert.Equal(1, _client.Strays);
        Assert.Equal(MissingCause.Silent, Ask("22F1A1").Missing);
    }

    [Fact, Trait("case", "OBD-01")]
    public void The_count_before_a_vehicle_identification_number_is_no_character_of_it()
    {
        // 49 02 01 and TESTVXN06AA000017.
        _bus.When("7E0#020902", 5, "7E8#1014490201544553").When("7E0#30", 1, "7E8#215456584E303641", "7E8#2241303030303137");
        Assert.Equal("TESTVXN06AA000017", VehicleInformation.ReadVehicleNumber(Ask("0902").Response.Span).Value);
    }

    /// <summary>An answer to nobody's question, ten bytes, that takes the line for 60 ms.</summary>
    private void GiveLongStray(double fromMs)
    {
        _bus.Give("7E8#100A62F1A0313131", fromMs);
        _bus.Give("7E8#2131313131000000", fromMs + 60);
    }
}
