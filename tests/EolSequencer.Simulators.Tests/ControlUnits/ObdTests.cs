using System.Text;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>Emissions services are asked of all units at once: who answers, and who keeps silent, is half of the answer.</summary>
public sealed class ObdTests
{
    [Fact]
    public void Several_units_answer_the_question_what_they_support()
    {
        var (powertrain, transmission) = AskAll("0100");
        Assert.Equal(["41009E3E8013"], powertrain); // 01, 04 to 07, 0B to 0F, 11, 1C, 1F and the next bitmap
        Assert.Equal(["410080080000"], transmission);
    }

    [Fact]
    public void Only_the_engine_answers_for_its_speed()
    {
        var (powertrain, transmission) = AskAll("010C");
        Assert.Equal(["410C0000"], powertrain);
        Assert.Empty(transmission);
    }

    [Fact]
    public void Both_answer_for_the_vehicle_speed_on_their_own_identifiers()
    {
        var (powertrain, transmission) = AskAll("010D");
        Assert.Equal(["410D00"], powertrain);
        Assert.Equal(["410D00"], transmission);
    }

    [Fact]
    public void Of_several_parameters_each_unit_gives_those_it_has()
    {
        var (powertrain, transmission) = AskAll("010C0D");
        Assert.Equal(["410C00000D00"], powertrain);
        Assert.Equal(["410D00"], transmission);
    }

    [Fact]
    public void What_nobody_supports_is_answered_by_nobody()
    {
        var (powertrain, transmission) = AskAll("0162");
        Assert.Empty(powertrain);
        Assert.Empty(transmission);
    }

    [Fact]
    public void Stored_pending_and_cleared_codes()
    {
        var (time, vehicle) = Vans.New("trouble_code=powertrain");
        var tester = new ScriptedTester(time, vehicle.Port, 0x7E0, 0x7E8);
        Assert.Equal("4301950A", tester.Ask("03"));
        Assert.Equal("4701950A", tester.Ask("07"));
        Assert.Equal("4A00", tester.Ask("0A"));
        Assert.StartsWith("410181", tester.Ask("0101")); // lamp on, one code
        Assert.Equal("44", tester.Ask("04"));
    }

    [Fact]
    public void The_vehicle_number_is_given_once_it_is_written()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x7E0, 0x7E8);
        Assert.Equal("", tester.Ask("0902"));
        vehicle.Network.Find("gateway")!.Memory.Vin = Vans.Vin;
        Assert.Equal("490201" + Convert.ToHexString(Encoding.ASCII.GetBytes(Vans.Vin)), tester.Ask("0902"));
        Assert.Equal("490054000000", tester.Ask("0900")); // types 02, 04 and 06
        Assert.StartsWith("490401", tester.Ask("0904"));
    }

    [Fact]
    public void The_running_engine_turns_at_idle_and_warms_up()
    {
        var (time, vehicle) = Vans.New();
        var tester = new ScriptedTester(time, vehicle.Port, 0x7E0, 0x7E8);
        vehicle.Van.Ignition.Press();
        vehicle.Van.Brakes.Press(true);
        vehicle.Van.Ignition.Press();
        time.Advance(TimeSpan.FromSeconds(5));
        Assert.InRange(Convert.ToInt32(tester.Ask("010C")[4..], 16) / 4.0, 740, 820);
        var cold = Convert.ToInt32(tester.Ask("0105")[4..], 16);
        time.Advance(TimeSpan.FromMinutes(4));
        Assert.InRange(Convert.ToInt32(tester.Ask("0105")[4..], 16) - cold, 6, 9);
    }

    private static (IEnumerable<string> Powertrain, IEnumerable<string> Transmission) AskAll(string request)
    {
        var (time, vehicle) = Vans.New();
        var powertrain = new ScriptedTester(time, vehicle.Port, 0x7E0, 0x7E8);
        var transmission = new ScriptedTester(time, vehicle.Port, 0x7E1, 0x7E9);
        vehicle.Port.SendAsync(CanFrame.Parse($"7DF#{request.Length / 2:X2}{request}".PadRight(20, '0')), default);
        time.Advance(TimeSpan.FromSeconds(1));
        return (powertrain.Heard.Select(heard => heard.Message), transmission.Heard.Select(heard => heard.Message));
    }
}
