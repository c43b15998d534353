using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Tests.Diagnostics;

/// <summary>
/// Timing and matching of requests against written-down frames; a late answer that is given to the next request would
/// judge a vehicle by another value. Timing values: ISO 15765-3 table 2, ISO 14229-2 and ISO 14229-1 annex A.
/// </summary>
public class DiagnosticClientTests
{
    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly ScriptedBus _bus;
    private readonly DiagnosticClient _client;

    public DiagnosticClientTests()
    {
        _bus = new ScriptedBus(_time);
        var address = TransportAddress.Normal(CanId.Base(0x7E0), CanId.Base(0x7E8));
        _client = new DiagnosticClient("powertrain", new TransportLink(_bus, _time), address, new DiagnosticTiming { P2 = TimeSpan.FromMilliseconds(50), P2Star = TimeSpan.FromMilliseconds(5000) });
    }

    private ExchangeEnd Ask(string request, double withinMs = 20_000) => _time.Run(async () =>
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(withinMs), _time);
        return await _client.RequestAsync(Convert.FromHexString(request), limit.Token);
    });

    private double NowMs => _time.Now.TotalMilliseconds;

    [Fact]
    public void An_answer_within_p2_is_taken()
    {
        _bus.When("7E0#0322F190", 49, "7E8#0462F19001");
        Assert.Equal("62F19001", Convert.ToHexString(Ask("22F190").Response.Span));
    }

    [Fact]
    public void No_answer_within_p2_is_silence_and_says_which_timer()
    {
        var end = Ask("22F190");
        Assert.Equal((MissingCause.Silent, "powertrain: 22F190: no answer within P2 (50 ms)"), (end.Missing, end.Detail));
        Assert.Equal(50.25, NowMs, 3);
    }

    [Fact, Trait("case", "UDS-03")]
    public void P2_runs_from_the_confirmation_to_the_first_frame()
    {
        _bus.Queueing = TimeSpan.FromMilliseconds(45);
        _bus.When("7E0#0322F190", 40, "7E8#101462F190313131").When("7E0#30", 150, "7E8#2131313131313131", "7E8#2231313131313131");
        Assert.Equal(20, Ask("22F190").Response.Length);
    }

    [Fact, Trait("case", "UDS-01")]
    public void Response_pending_extends_the_wait()
    {
        _bus.When("7E0#0431010203", 40, "7E8#037F3178");
        _bus.Give("7E8#037F3178", 4000);
        _bus.Give("7E8#057101020300", 7500);
        Assert.True(Ask("31010203").IsPositive);
        Assert.Equal(7500, NowMs, 1);
    }

    [Fact, Trait("case", "UDS-01")]
    public void The_callers_limit_ends_a_pending_request()
    {
        _bus.When("7E0#0431010203", 40, "7E8#037F3178");
        _bus.Give("7E8#037F3178", 4000);
        Assert.ThrowsAny<OperationCanceledException>(() => Ask("31010203", withinMs: 6000));
        Assert.Equal(6000, NowMs, 1);
    }

    [Fact]
    public void After_pending_p2_star_counts_and_is_named()
    {
        _bus.When("7E0#0431010203", 40, "7E8#037F3178");
        Assert.Equal("powertrain: 31010203: no answer within P2* (5000 ms) after 1 x \"response pending\"", Ask("31010203").Detail);
        Assert.Equal(5040.25, NowMs, 2);
    }

    [Fact, Trait("case", "UDS-04")]
    public void A_late_answer_never_reaches_the_next_request()
    {
        Assert.Equal(MissingCause.Silent, Ask("22F1A0").Missing);
        _bus.When("7E0#0322F1A1", 20, "7E8#0462F1A005", "7E8#0462F1A109");
        Assert.Equal("62F1A109", Convert.ToHexString(Ask("22F1A1").Response.Span));
        Assert.Equal(1, _client.Strays);
    }

    [Fact, Trait("case", "UDS-06")]
    public void Busy_is_asked_again_after_a_pause()
    {
        _bus.When("7E0#042EF1A501", 5, "7E8#037F2E21").When("7E0#042EF1A501", 5, "7E8#037F2E21").When("7E0#042EF1A501", 5, "7E8#036EF1A5");
        Assert.True(Ask("2EF1A501").IsPositive);
        Assert.Equal(3, _bus.Sent.Count);
        Assert.True(_bus.Sent[1].AtMs - _bus.Sent[0].AtMs >= 100);
    }

    [Fact, Trait("case", "UDS-06")]
    public void Busy_for_ever_ends_after_five_tries()
    {
        for (var tries = 0; tries < 9; tries++) _bus.When("7E0#042EF1A501", 5, "7E8#037F2E21");
        Assert.Equal(MissingCause.Refused, Ask("2EF1A501").Missing);
        Assert.Equal(5, _bus.Sent.Count);
    }

    [Fact]
    public void A_refusal_of_another_service_is_not_the_answer()
    {
        _bus.When("7E0#0322F190", 5, "7E8#037F2E31", "7E8#037F2231");
        Assert.Equal("powertrain: 22F190: 31 requestOutOfRange", Ask("22F190").Detail);
        Assert.Equal(1, _client.Strays);
    }

    [Fact, Trait("case", "ITP-02")]
    public void A_sender_that_goes_silent_in_the_middle_is_noticed_without_traffic()
    {
        _bus.When("7E0#0322F1A0", 5, "7E8#101462F1A0313131");
        var end = Ask("22F1A0");
        Assert.Contains("N_TIMEOUT_Cr", end.Detail, StringComparison.Ordinal);
        Assert.InRange(NowMs, 1000, 1100);
    }

    [Fact, Trait("case", "ITP-03")]
    public void A_gap_in_the_sequence_drops_the_message_and_the_next_request_works()
    {
        _bus.When("7E0#0322F1A0", 5, "7E8#101B62F1A0313131").When("7E0#30", 5, "7E8#2131313131313131", "7E8#2231313131313131", "7E8#2631313131313131");
        Assert.Contains("N_WRONG_SN", Ask("22F1A0").Detail, StringComparison.Ordinal);
        _bus.When("7E0#0322F1A1", 5, "7E8#0462F1A109");
        Assert.True(Ask("22F1A1").IsPositive);
    }

    [Fact, Trait("case", "ITP-04")]
    public void Overflow_stops_the_transmission_at_once()
    {
        _bus.When("7E0#103C", 5, "7E8#320000");
        var end = Ask("2EF190" + new string('0', 114));
        Assert.Contains("N_BUFFER_OVFLW", end.Detail, StringComparison.Ordinal);
        Assert.Single(_bus.Sent);
        Assert.InRange(NowMs, 0, 20);
    }

    [Fact, Trait("case", "ITP-05")]
    public void A_reserved_separation_time_counts_as_127_ms()
    {
        _bus.When("7E0#1022", 5, "7E8#300080").When("7E0#24", 5, "7E8#036EF190");
        Assert.True(Ask("2EF190" + new string('0', 62)).IsPositive);
        var consecutive = _bus.Sent.Skip(1).Select(sent => sent.AtMs).ToList();
        Assert.Equal(4, consecutive.Count);
        Assert.All(consecutive.Zip(consecutive.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 127));
    }

    [Fact, Trait("case", "ITP-06")]
    public void No_flow_control_is_told_apart_and_does_not_spoil_the_next_request()
    {
        Assert.Contains("N_TIMEOUT_Bs", Ask("2EF190" + new string('0', 74)).Detail, StringComparison.Ordinal);
        _bus.When("7E0#023E00", 5, "7E8#027E00");
        Assert.True(Ask("3E00").IsPositive);
    }

    [Fact]
    public void A_link_that_is_down_is_said_to_be_down()
    {
        _bus.Change(LinkState.Down);
        Assert.Equal(MissingCause.LinkDown, Ask("22F190").Missing);
    }

    [Fact]
    public void A_request_given_up_in_the_middle_leaves_the_channel_usable()
    {
        Assert.ThrowsAny<OperationCanceledException>(() => Ask("2EF190" + new string('0', 74), withinMs: 300));
        _bus.When("7E0#023E00", 5, "7E8#027E00");
        Assert.True(Ask("3E00").IsPositive);
    }

    [Fact]
    public void Two_requests_to_one_unit_go_one_after_the_other()
    {
        _bus.When("7E0#0322F1A0", 30, "7E8#0462F1A005").When("7E0#0322F1A1", 30, "7E8#0462F1A109");
        var ends = _time.Run(() => Task.WhenAll(
            _client.RequestAsync(Convert.FromHexString("22F1A0"), default).AsTask(), _client.RequestAsync(Convert.FromHexString("22F1A1"), default).AsTask()));
        Assert.Equal(["62F1A005", "62F1A109"], ends.Select(end => Convert.ToHexString(end.Response.Span)));
    }
}
