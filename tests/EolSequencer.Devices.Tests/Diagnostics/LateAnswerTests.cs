using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Tests.Diagnostics;

/// <summary>
/// Answers of requests that were given up. A refusal repeats the service only, and a repeated read is the same request:
/// the bytes alone cannot say whose such an answer is (ISO 14229-1), so it is held back for one more P2.
/// </summary>
[Trait("case", "UDS-04")]
public class LateAnswerTests
{
    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly ScriptedBus _bus;
    private readonly DiagnosticClient _client;

    public LateAnswerTests()
    {
        _bus = new ScriptedBus(_time);
        var timing = new DiagnosticTiming { P2 = TimeSpan.FromMilliseconds(50), P2Star = TimeSpan.FromMilliseconds(5000) };
        _client = new DiagnosticClient("powertrain", new TransportLink(_bus, _time), TransportAddress.Normal(CanId.Base(0x7E0), CanId.Base(0x7E8)), timing);
    }

    private double NowMs => _time.Now.TotalMilliseconds;

    private ExchangeEnd Ask(string request, double withinMs = 20_000) => _time.Run(async () =>
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(withinMs), _time);
        return await _client.RequestAsync(Convert.FromHexString(request), limit.Token);
    });

    private static string Hex(ExchangeEnd end) => Convert.ToHexString(end.Response.Span);

    [Fact]
    public void A_late_refusal_is_not_the_answer_of_the_next_request_of_its_service()
    {
        Ask("22F1A0");
        _bus.When("7E0#0322F1A1", 10, "7E8#037F2231");
        _bus.Give("7E8#0462F1A109", 40);
        Assert.Equal("62F1A109", Hex(Ask("22F1A1")));
    }

    [Fact]
    public void A_late_value_is_not_the_value_of_the_same_request_asked_again()
    {
        Ask("22F1A0");
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A005");
        _bus.Give("7E8#0462F1A009", 40);
        Assert.Equal("62F1A009", Hex(Ask("22F1A0")));
    }

    [Fact]
    public void A_late_busy_does_not_send_the_next_request_twice()
    {
        Ask("31010203");
        _bus.When("7E0#0431010203", 10, "7E8#037F3121");
        _bus.Give("7E8#0471010203", 40);
        Assert.True(Ask("31010203").IsPositive);
        Assert.Equal(2, _bus.Sent.Count);
    }

    [Fact]
    public void When_nothing_follows_the_answer_was_its_own_and_keeps_its_moment()
    {
        Ask("22F1A0");
        var begun = NowMs;
        _bus.When("7E0#0322F1A1", 10, "7E8#037F2231");
        var end = Ask("22F1A1");
        Assert.Equal((MissingCause.Refused, begun + 10.25), (end.Missing, TimeSpan.FromTicks(end.Stamp).TotalMilliseconds));
        Assert.Equal(begun + 10.25 + 50, NowMs, 3);
    }

    [Fact]
    public void An_answer_from_before_the_request_went_out_is_never_its_own()
    {
        Ask("22F1A0");
        _bus.Queueing = TimeSpan.FromMilliseconds(30);
        _bus.Give("7E8#037F2231", 20);
        var end = Ask("22F1A1");
        Assert.Equal(MissingCause.Silent, end.Missing);
    }

    [Fact]
    public void What_names_another_identifier_is_told_apart_at_once()
    {
        Ask("22F1A0");
        var begun = NowMs;
        _bus.When("7E0#0322F1A1", 10, "7E8#0462F1A005", "7E8#0462F1A109");
        Assert.Equal("62F1A109", Hex(Ask("22F1A1")));
        Assert.Equal(begun + 10.25, NowMs, 3);
        Assert.Equal(1, _client.Strays);
    }

    [Fact]
    public void Another_service_is_told_apart_at_once()
    {
        Ask("22F1A0");
        var begun = NowMs;
        _bus.When("7E0#023E00", 10, "7E8#037F3E12");
        Assert.Equal(MissingCause.Refused, Ask("3E00").Missing);
        Assert.Equal(begun + 10.25, NowMs, 3);
    }

    [Fact]
    public void A_late_answer_that_came_between_the_requests_settles_it()
    {
        Ask("22F1A0");
        _bus.Give("7E8#0462F1A005", 10);
        _time.Advance(TimeSpan.FromMilliseconds(20));
        var begun = NowMs;
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A009");
        Assert.Equal("62F1A009", Hex(Ask("22F1A0")));
        Assert.Equal(begun + 10.25, NowMs, 3);
    }

    [Fact]
    public void An_answered_request_settles_everything_before_it()
    {
        Ask("22F1A0");
        _bus.When("7E0#023E00", 10, "7E8#027E00").When("7E0#0322F1A1", 10, "7E8#037F2231");
        Ask("3E00");
        var begun = NowMs;
        Ask("22F1A1");
        Assert.Equal(begun + 10.25, NowMs, 3);
    }

    [Theory]
    [InlineData(4900, 60.25)]
    [InlineData(5100, 10.25)]
    public void Nothing_is_expected_any_more_after_P2_star(double laterMs, double tookMs)
    {
        Ask("22F1A0");
        _time.Advance(TimeSpan.FromMilliseconds(laterMs));
        var begun = NowMs;
        _bus.When("7E0#0322F1A1", 10, "7E8#037F2231");
        Ask("22F1A1");
        Assert.Equal(begun + tookMs, NowMs, 3);
    }

    [Fact]
    public void Several_requests_given_up_owe_an_answer_each()
    {
        Ask("22F1A0");
        Ask("22F1A0");
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A001");
        _bus.Give("7E8#0462F1A002", 20);
        _bus.Give("7E8#0462F1A003", 30);
        Assert.Equal("62F1A003", Hex(Ask("22F1A0")));
    }

    [Fact]
    public void A_silent_unit_costs_no_more_than_P2_however_often_it_is_asked()
    {
        for (var times = 0; times < 20; times++) Assert.Equal(MissingCause.Silent, Ask("22F1A0").Missing);
        Assert.Equal(20 * 50.25, NowMs, 3);
    }

    [Fact]
    public void A_request_that_the_caller_gave_up_owes_its_answer_too()
    {
        Assert.ThrowsAny<OperationCanceledException>(() => Ask("22F1A0", withinMs: 20));
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A005");
        _bus.Give("7E8#0462F1A009", 40);
        Assert.Equal("62F1A009", Hex(Ask("22F1A0")));
    }

    [Fact]
    public void A_request_given_up_on_the_wire_owes_its_answer_too()
    {
        _bus.Queueing = TimeSpan.FromMilliseconds(10);
        Assert.ThrowsAny<OperationCanceledException>(() => Ask("22F1A0", withinMs: 5));
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A005");
        _bus.Give("7E8#0462F1A009", 40);
        Assert.Equal("62F1A009", Hex(Ask("22F1A0")));
    }

    [Fact]
    public void Pending_after_a_held_back_answer_shows_that_it_was_the_late_one()
    {
        Ask("22F1A0");
        _bus.When("7E0#0322F1A0", 10, "7E8#0462F1A005", "7E8#037F2278");
        var end = Ask("22F1A0");
        Assert.Equal((MissingCause.Silent, "powertrain: 22F1A0: no answer within P2* (5000 ms) after 1 x \"response pending\""), (end.Missing, end.Detail));
    }

    [Fact]
    public void A_unit_that_is_busy_with_the_request_before_still_owes_its_answer()
    {
        Ask("22F1A0");
        _bus.When("7E0#0322F1A0", 1, "7E8#037F2221").When("7E0#0322F1A0", 20, "7E8#0462F1A005");
        _bus.Give("7E8#0462F1A009", 1 + 50 + 100 + 45);
        Assert.Equal("62F1A009", Hex(Ask("22F1A0")));
        Assert.Equal(3, _bus.Sent.Count);
    }

    [Fact]
    public void That_a_unit_is_there_may_be_said_late()
    {
        Ask("3E00");
        var begun = NowMs;
        _bus.When("7E0#023E00", 5, "7E8#027E00");
        Assert.True(Ask("3E00").IsPositive);
        Assert.Equal(begun + 5.25, NowMs, 3);
    }

    [Fact]
    public void A_late_message_that_breaks_off_does_not_end_the_next_request()
    {
        Ask("22F1A0");
        _bus.When("7E0#0322F1A1", 10, "7E8#101462F1A0313131", "7E8#2531313131313131");
        _bus.Give("7E8#0462F1A109", 45);
        Assert.Equal("62F1A109", Hex(Ask("22F1A1")));
    }
}
