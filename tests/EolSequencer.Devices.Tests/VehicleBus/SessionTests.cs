using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>
/// Sessions: the times a unit states, and TesterPresent as long as one is open. S3 of a unit is 5000 ms (ISO 14229-2); a
/// session lost while the operator walks round the vehicle would let outputs fall back.
/// </summary>
public class SessionTests
{
    private const string Present = "7DF#023E80CCCCCCCCCC";

    private static readonly ChannelDescription Value = Describe.Data("gateway", 0x2104, Describe.Number(8));

    private readonly BusBench _bench = new();

    [Fact, Trait("case", "UDS-02")]
    public void P2_counts_in_steps_of_1_ms_and_is_taken_over()
    {
        Enter("gateway", "710", "718", "00C801F4");
        _bench.Bus.When("710#03222104", 199, "718#0462210407");
        Assert.Equal("7", _bench.Read(Value).Value!.ToString());
        Assert.Equal("gateway: 222104: no answer within P2 (250 ms)", _bench.Read(Value).Detail);
    }

    [Fact, Trait("case", "UDS-02")]
    public void P2_star_counts_in_steps_of_10_ms()
    {
        Enter("gateway", "710", "718", "003201F4");
        var begun = _bench.NowMs;
        _bench.Bus.When("710#03222104", 40, "718#037F2278");
        Assert.Equal("gateway: 222104: no answer within P2* (5050 ms) after 1 x \"response pending\"", _bench.Read(Value).Detail);
        Assert.Equal(begun + 0.25 + 40 + 5050, _bench.NowMs, 3);
    }

    [Fact, Trait("case", "UDS-02")]
    public void Times_that_the_station_fixes_hold_whatever_a_unit_states()
    {
        var bench = new BusBench(timing: new DiagnosticTiming { P2 = TimeSpan.FromMilliseconds(70), TakesStatedTimes = false });
        bench.Bus.When("710#021003", 2, "718#06500300C801F4");
        bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession));
        Assert.Equal("gateway: 222104: no answer within P2 (70 ms)", bench.Read(Value).Detail);
    }

    [Fact, Trait("case", "UDS-02")]
    public void Stated_times_that_differ_from_fixed_ones_are_told_once()
    {
        var bench = new BusBench(timing: new DiagnosticTiming { P2 = TimeSpan.FromMilliseconds(70), TakesStatedTimes = false });
        bench.Bus.When("710#021003", 2, "718#06500300C801F4");
        for (var times = 0; times < 3; times++) bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession));
        Assert.Equal("gateway states times that make P2 250 ms and P2* 5050 ms with the way; the station's 70 ms and 5050 ms hold", Assert.Single(bench.Notes));
    }

    [Fact]
    public void Stated_times_that_are_the_fixed_ones_are_not_worth_a_word()
    {
        var bench = new BusBench(timing: new DiagnosticTiming { TakesStatedTimes = false });
        bench.Bus.When("710#021003", 2, "718#065003003201F4");
        bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession));
        Assert.Empty(bench.Notes);
    }

    [Fact]
    public void Only_the_unit_that_stated_them_has_these_times()
    {
        Enter("gateway", "710", "718", "00C801F4");
        Assert.Equal("brakes: 222104: no answer within P2 (100 ms)", _bench.Read(Describe.Data("brakes", 0x2104, Describe.Number(8))).Detail);
    }

    [Theory]
    [InlineData(ServiceAct.DefaultSession, "021001", "0650010064001E", "150")]
    [InlineData(ServiceAct.Reset, "021101", "025101", "100")]
    public void After_the_session_the_times_are_the_usual_ones_again(ServiceAct act, string request, string answer, string p2)
    {
        Enter("gateway", "710", "718", "00C801F4");
        _bench.Bus.When($"710#{request}", 2, $"718#{answer}");
        _bench.Act(Describe.Act("gateway", act));
        Assert.Equal($"gateway: 222104: no answer within P2 ({p2} ms)", _bench.Read(Value).Detail);
    }

    [Fact]
    public void A_session_without_stated_times_keeps_the_stations()
    {
        _bench.Bus.When("710#021003", 2, "718#025003");
        Assert.Null(_bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession)).Missing);
        Assert.Equal("gateway: 222104: no answer within P2 (100 ms)", _bench.Read(Value).Detail);
    }

    [Fact]
    public void An_open_session_is_kept_alive_every_two_seconds()
    {
        Enter("gateway", "710", "718", "003201F4");
        _bench.Pass(9000);
        Assert.Equal([2002.5, 4002.5, 6002.5, 8002.5], PresentAt());
    }

    [Fact]
    public void It_is_kept_alive_while_a_request_is_pending()
    {
        Enter("gateway", "710", "718", "003201F4");
        _bench.Bus.When("710#03222104", 40, "718#037F2278");
        _bench.Bus.Give("718#0462210407", 4500);
        Assert.NotNull(_bench.Read(Value).Value);
        Assert.Equal(2, PresentAt().Count);
    }

    [Fact]
    public void Nothing_is_kept_alive_before_a_session_or_after_a_refused_one()
    {
        _bench.Bus.When("710#021003", 2, "718#037F1022");
        Assert.Equal(MissingCause.Refused, _bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession)).Missing);
        _bench.Pass(9000);
        Assert.Empty(PresentAt());
    }

    [Theory]
    [InlineData(ServiceAct.DefaultSession, "021001", "065001003201F4")]
    [InlineData(ServiceAct.Reset, "021101", "025101")]
    public void It_ends_with_the_last_session(ServiceAct act, string request, string answer)
    {
        Enter("gateway", "710", "718", "003201F4");
        Enter("brakes", "713", "71B", "003201F4");
        _bench.Bus.When($"710#{request}", 2, $"718#{answer}").When($"713#{request}", 2, $"71B#{answer}");
        _bench.Act(Describe.Act("gateway", act));
        _bench.Pass(5000);
        Assert.Equal(2, PresentAt().Count);
        _bench.Act(Describe.Act("brakes", act));
        _bench.Pass(9000);
        Assert.Equal(2, PresentAt().Count);
    }

    [Fact]
    public void It_ends_with_the_device()
    {
        Enter("gateway", "710", "718", "003201F4");
        _bench.Time.Run(() => _bench.Device.DisposeAsync().AsTask());
        _bench.Pass(9000);
        Assert.Empty(PresentAt());
    }

    [Fact]
    public void On_a_dead_bus_the_next_one_waits_until_the_one_before_was_taken_back()
    {
        var bench = new BusBench(timing: new DiagnosticTiming { KeepAlive = TimeSpan.FromMilliseconds(400) });
        bench.Bus.When("710#021003", 2, "718#065003003201F4");
        bench.Act(Describe.Act("gateway", ServiceAct.ExtendedSession));
        bench.Bus.AcknowledgedFrames = 0;
        bench.Pass(20_000);
        bench.Bus.AcknowledgedFrames = int.MaxValue;
        bench.Pass(1500);
        Assert.InRange(bench.Bus.SentTo("7DF").Count(), 1, 3);
    }

    [Fact]
    public void All_units_are_asked_in_turn_and_the_first_refusal_ends_it()
    {
        _bench.Bus.When("710#021003", 2, "718#065003003201F4").When("713#021003", 2, "71B#037F1022");
        var reading = _bench.Act(Describe.Act(null, ServiceAct.ExtendedSession));
        Assert.Equal((MissingCause.Refused, "brakes: 1003: 22 conditionsNotCorrect"), (reading.Missing, reading.Detail));
        Assert.Equal(2, _bench.Bus.Sent.Count);
    }

    [Fact]
    public void Codes_of_every_unit_are_cleared()
    {
        _bench.Bus
            .When("710#0414FFFFFF", 2, "718#0154").When("713#0414FFFFFF", 2, "71B#0154")
            .When("7E0#0414FFFFFF", 2, "7E8#0154").When("7E1#0414FFFFFF", 2, "7E9#0154");
        Assert.Null(_bench.Act(Describe.Act(null, ServiceAct.ClearTroubleCodes)).Missing);
        Assert.Equal(4, _bench.Bus.Sent.Count);
    }

    [Fact]
    public void Sessions_of_units_in_both_identifier_formats_are_kept_alive()
    {
        var bench = new BusBench(fitted: [new ControlUnit("gateway", 0x710, 0x718, null, null), new ControlUnit("drive", 0x18DA10F1, 0x18DAF110, null, null)]);
        bench.Bus.When("18DA10F1#021003", 2, "18DAF110#065003003201F4");
        bench.Act(Describe.Act("drive", ServiceAct.ExtendedSession));
        bench.Pass(2100);
        Assert.Equal([Present, "18DB33F1#023E80CCCCCCCCCC"], bench.Bus.Sent.Skip(1).Select(sent => sent.Frame));
    }

    private void Enter(string unit, string request, string response, string times)
    {
        _bench.Bus.When($"{request}#021003", 2, $"{response}#065003{times}");
        Assert.Null(_bench.Act(Describe.Act(unit, ServiceAct.ExtendedSession)).Missing);
    }

    private List<double> PresentAt() => [.. _bench.Bus.Sent.Where(sent => sent.Frame == Present).Select(sent => Math.Round(sent.AtMs, 2))];
}
