using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>The tester's timers are only tested by units that keep, and when told break, the times of ISO 14229-2.</summary>
public sealed class DiagnosticTimingTests
{
    private static readonly TimeSpan P2 = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan P2Star = TimeSpan.FromMilliseconds(5000);

    [Theory]
    [InlineData("1003", "5003003201F4")] // P2 in steps of 1 ms, P2* in steps of 10 ms
    [InlineData("22F195", "62F195475732363034313730313030")] // segmented: P2 ends at the first frame
    [InlineData("190208", "5902AF")]
    [InlineData("222199", "7F2231")]
    public void An_answer_begins_within_P2_of_the_end_of_the_request(string request, string answer)
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        var sent = tester.Send(request);
        time.Advance(TimeSpan.FromSeconds(1));
        var heard = Assert.Single(tester.Heard);
        Assert.Equal(answer, heard.Message);
        Assert.InRange(heard.First - sent, TimeSpan.FromMilliseconds(1), P2);
    }

    [Fact]
    public void Work_beyond_P2_is_announced_by_response_pending()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        var sent = tester.Send("14FFFFFF");
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(["7F1478", "54"], tester.Heard.Select(heard => heard.Message));
        Assert.InRange(tester.Heard[0].First - sent, TimeSpan.Zero, P2);
        Assert.InRange(tester.Heard[1].First - tester.Heard[0].Last, TimeSpan.Zero, P2Star);
    }

    [Fact]
    public void Repeated_response_pending_keeps_its_distance()
    {
        // ISO 14229-2:2013, table 4: at least 0.3 x P2* apart, and less than P2*.
        var (time, vehicle) = Vans.New("pends_for_ever=gateway");
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Send("22F195");
        time.Advance(TimeSpan.FromSeconds(20));
        Assert.InRange(tester.Heard.Count, 5, 10);
        Assert.All(tester.Heard, heard => Assert.Equal("7F2278", heard.Message));
        Assert.All(
            tester.Heard.Zip(tester.Heard.Skip(1)),
            pair => Assert.InRange(pair.Second.First - pair.First.First, 0.3 * P2Star, P2Star - TimeSpan.FromMilliseconds(1)));
    }

    [Fact]
    public void After_response_pending_the_answer_is_sent_although_it_may_stay_away()
    {
        // ISO 14229-1, annex A.1, code 78: the suppression no longer counts.
        var (time, vehicle) = Vans.New("answers_late=brakes:0");
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        Assert.Equal("5003003201F4", tester.Ask("1003"));
        Assert.Equal("", tester.Ask("3E80"));
        Assert.Equal("", tester.Ask("31810301")); // 20 ms of work: no pending, so suppressed
        tester.Heard.Clear();
        vehicle.Network.Find("brakes")!.Quirks.PendsForEver = true;
        tester.Send("31810301");
        time.Advance(TimeSpan.FromMilliseconds(100));
        Assert.Equal(["7F3178"], tester.Heard.Select(heard => heard.Message));
    }

    [Fact]
    public void A_request_during_work_is_told_to_come_again()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Send("14FFFFFF");
        tester.Send("22F195");
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(["7F2221", "7F1478", "54"], tester.Heard.Select(heard => heard.Message));
    }

    [Fact]
    public void A_busy_unit_answers_when_it_is_asked_often_enough()
    {
        var (time, vehicle) = Vans.New("busy=brakes:2");
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        Assert.Equal(["7F2221", "7F2221", "62F18746373133303030333032"], new[] { "22F187", "22F187", "22F187" }.Select(ask => tester.Ask(ask)));
    }

    [Fact]
    public void A_late_unit_answers_after_P2_without_a_word()
    {
        var (time, vehicle) = Vans.New("answers_late=brakes:0.4");
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        var sent = tester.Send("22F187");
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.InRange(Assert.Single(tester.Heard).First - sent, TimeSpan.FromMilliseconds(400), TimeSpan.FromMilliseconds(420));
    }

    [Theory]
    [InlineData(4_900, "6F2210")]
    [InlineData(5_100, "7F2F7F")]
    public void The_session_ends_when_the_tester_is_silent_for_S3(int silenceMs, string answer)
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003", 0);
        time.Advance(TimeSpan.FromMilliseconds(silenceMs));
        Assert.StartsWith(answer, tester.Ask("2F22100301"));
    }

    [Fact]
    public void Outputs_fall_back_at_the_end_of_S3_and_not_before()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        tester.Send("2F22010301");
        time.Advance(TimeSpan.FromMilliseconds(100));
        var answered = tester.Heard[^1].Last;
        time.Advance(answered + TimeSpan.FromMilliseconds(4_999) - time.Now);
        Assert.True(vehicle.Van.Horn.Sounds);
        time.Advance(TimeSpan.FromMilliseconds(2));
        Assert.False(vehicle.Van.Horn.Sounds);
    }

    [Fact]
    public void A_tester_present_to_all_keeps_every_session()
    {
        var (time, vehicle) = Vans.New();
        var gateway = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        var brakes = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        gateway.Ask("1003");
        brakes.Ask("1003");
        for (var i = 0; i < 10; i++)
        {
            vehicle.Port.SendAsync(CanFrame.Parse("7DF#023E80"), default);
            time.Advance(TimeSpan.FromSeconds(3));
        }

        Assert.Equal("62F18603", gateway.Ask("22F186"));
        Assert.Equal("62F18603", brakes.Ask("22F186"));
        time.Advance(TimeSpan.FromSeconds(6));
        Assert.Equal("62F18601", gateway.Ask("22F186"));
    }

    [Fact]
    public void A_unit_that_restarts_is_silent_for_its_boot_time_and_then_in_the_default_session()
    {
        var (time, vehicle) = Vans.New("boot_time=brakes:2");
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        tester.Ask("1003");
        Assert.Equal("5101", tester.Ask("1101", 50));
        Assert.Equal("", tester.Ask("3E00", 1_900));
        time.Advance(TimeSpan.FromMilliseconds(100));
        Assert.Equal("7E00", tester.Ask("3E00"));
        Assert.Equal("62F18601", tester.Ask("22F186"));
    }
}
