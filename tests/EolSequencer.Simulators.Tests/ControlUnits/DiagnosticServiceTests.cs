using System.Text;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>Units must refuse what a real one refuses, and in the order of ISO 14229-1, or a wrong request would pass in rehearsal.</summary>
public sealed class DiagnosticServiceTests
{
    private static readonly string VinBytes = Convert.ToHexString(Encoding.ASCII.GetBytes(Vans.Vin));

    [Theory]
    [InlineData("3D00", "7F3D11")]      // service not supported
    [InlineData("2F22010301", "7F2F7F")] // not in this session
    [InlineData("2703", "7F277F")]
    [InlineData("3E", "7F3E13")]        // length
    [InlineData("3E01", "7F3E12")]      // sub-function
    [InlineData("10", "7F1013")]
    [InlineData("1002", "7F1012")]
    [InlineData("22F1", "7F2213")]
    [InlineData("22F190F1", "7F2213")]
    [InlineData("22FFFF", "7F2231")]    // out of range
    [InlineData("19FF", "7F1912")]
    [InlineData("1902", "7F1913")]
    [InlineData("14FFFFFE", "7F1431")]
    [InlineData("14FFFF", "7F1413")]
    public void In_the_default_session_a_wrong_request_is_refused(string request, string answer)
    {
        var (time, vehicle) = Vans.New();
        Assert.Equal(answer, new ScriptedTester(time, vehicle.Port, 0x710, 0x718).Ask(request));
    }

    [Theory]
    [InlineData("2F2201", "7F2F13")]
    [InlineData("2F22010302", "7F2F31")]  // a state beyond yes and no
    [InlineData("2F2201030101", "7F2F13")]
    [InlineData("2F22010201", "7F2F31")]  // freezing is not offered
    [InlineData("2FFFFF0301", "7F2F31")]
    [InlineData("2701", "7F2712")]        // a level that the unit does not have
    [InlineData("270411223344", "7F2724")] // a key without a seed
    [InlineData("2E2108", "7F2E13")]
    [InlineData("2EFFFF00", "7F2E31")]
    [InlineData("2E2108414243", "7F2E13")]
    [InlineData("2E21084142434445464748", "7F2E33")] // locked
    [InlineData("31010301", "7F3131")]    // the gateway has no such routine
    [InlineData("280401", "7F2812")]
    [InlineData("8503", "7F8512")]
    public void In_the_extended_session_a_wrong_request_is_refused(string request, string answer)
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        Assert.Equal(answer, tester.Ask(request));
    }

    [Fact]
    public void Several_identifiers_are_answered_together_without_the_unknown()
    {
        var (time, vehicle) = Vans.New();
        Assert.Equal("622106" + "0E" + "210B" + "02", new ScriptedTester(time, vehicle.Port, 0x710, 0x718).Ask("222106FFFF210B"));
    }

    [Fact]
    public void The_right_key_opens_the_gateway_and_its_number_is_passed_on()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        Assert.Equal("6704", Unlock(tester));
        Assert.Equal("670300000000", tester.Ask("2703")); // open already
        Assert.Equal("6EF190", tester.Ask("2EF190" + VinBytes));
        foreach (var (request, response) in new[] { (0x710u, 0x718u), (0x713u, 0x71Bu), (0x714u, 0x71Cu), (0x715u, 0x71Du) })
        {
            Assert.Equal("62F190" + VinBytes, new ScriptedTester(time, vehicle.Port, request, response).Ask("22F190"));
        }
    }

    [Fact]
    public void A_change_of_session_locks_again()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        Unlock(tester);
        tester.Ask("1003");
        Assert.Equal("7F2E33", tester.Ask("2EF190" + VinBytes));
    }

    [Fact]
    public void Three_wrong_keys_make_the_tester_wait()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        foreach (var answer in new[] { "7F2735", "7F2735", "7F2736" })
        {
            tester.Ask("2703");
            Assert.Equal(answer, tester.Ask("270400000000"));
        }

        Assert.Equal("7F2737", tester.Ask("2703"));
        for (var i = 0; i < 4; i++) tester.Ask("3E00", 3_000);
        Assert.StartsWith("6703", tester.Ask("2703"));
    }

    [Fact]
    public void A_key_of_another_seed_does_not_open()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x710, 0x718);
        tester.Ask("1003");
        var seed = Convert.FromHexString(tester.Ask("2703")[4..]);
        tester.Ask("2703");
        Assert.Equal("7F2735", tester.Ask("2704" + Convert.ToHexString(SeedKey.KeyOf(3, seed))));
    }

    [Fact]
    public void A_routine_gives_its_result_once_it_is_done()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        tester.Ask("1003");
        Assert.Equal("7F3124", tester.Ask("31030301")); // nothing was started
        Assert.Equal("71010301", tester.Ask("31010301"));
        Assert.Equal("7103030100", tester.Ask("31030301"));
        time.Advance(TimeSpan.FromSeconds(3));
        Assert.Equal("7103030103", tester.Ask("31030301"));
    }

    [Fact]
    public void Codes_of_the_past_are_cleared_and_present_ones_come_back()
    {
        var (time, vehicle) = Vans.New("trouble_code=brakes");
        var camera = new ScriptedTester(time, vehicle.Port, 0x711, 0x719);
        var brakes = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        Assert.Equal("5902AF96010028", camera.Ask("190208"));
        Assert.Equal("5902AF9501012F", brakes.Ask("190208"));
        Assert.Equal("5901AF000001", brakes.Ask("190108"));
        camera.Ask("14FFFFFF");
        brakes.Ask("14FFFFFF");
        Assert.Equal("5902AF", camera.Ask("190208"));
        Assert.Equal("5902AF9501012F", brakes.Ask("190208"));
    }

    [Fact]
    public void Muted_units_keep_their_frames_back_until_the_session_ends()
    {
        var (time, vehicle) = Vans.New();
        var heard = new Bus.HeardFrames();
        var tester = new ScriptedTester(time, vehicle.Port, 0x713, 0x71B);
        using var listening = vehicle.Port.Listen(CanId.Base(0x1B0), heard, Repeats.All);
        tester.Ask("1003");
        Assert.Equal("6801", tester.Ask("280101"));
        heard.Frames.Clear();
        time.Advance(TimeSpan.FromSeconds(4));
        Assert.Empty(heard.Frames);
        time.Advance(TimeSpan.FromSeconds(2));
        Assert.NotEmpty(heard.Frames);
    }

    [Fact]
    public void Of_a_request_to_all_only_those_answer_that_know_it()
    {
        // ISO 14229-1: codes 11, 12, 31, 7E and 7F stay away when a group was asked.
        var (time, vehicle) = Vans.New();
        var testers = vehicle.Network.Units.Select(unit => new ScriptedTester(time, vehicle.Port, unit.Type.Request, unit.Type.Response)).ToArray();
        vehicle.Port.SendAsync(CanFrame.Parse("7DF#03222106AAAAAAAA"), default);
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(["6221060E"], testers.SelectMany(tester => tester.Heard).Select(heard => heard.Message));
    }

    [Fact]
    public void A_dead_unit_is_missed_by_the_gateway()
    {
        var (time, vehicle) = Vans.New("unit_silent=door_right");
        Assert.Equal("", new ScriptedTester(time, vehicle.Port, 0x721, 0x729).Ask("3E00"));
        Assert.Equal("6221060D", new ScriptedTester(time, vehicle.Port, 0x710, 0x718).Ask("222106"));
    }

    private static string Unlock(ScriptedTester tester) =>
        tester.Ask("2704" + Convert.ToHexString(SeedKey.KeyOf(3, Convert.FromHexString(tester.Ask("2703")[4..]))));
}
