using EolSequencer.Simulators.Faults;

namespace EolSequencer.Simulators.Tests.Faults;

/// <summary>Faults are typed on a command line; what is wrong there must be said there.</summary>
public sealed class FaultTextTests
{
    [Theory]
    [InlineData("flasher_dead", "flasher_dead")]
    [InlineData("battery_voltage=12.2", "battery_voltage=12.2")]
    [InlineData("battery_voltage = 12.2 V", "battery_voltage=12.2")]
    [InlineData("lamp_open=low_right", "lamp_open=low_right")]
    [InlineData("lamp_open", "lamp_open=low_left")] // the first place
    [InlineData("squib_loop=belt_left:4.4", "squib_loop=belt_left:4.4")]
    [InlineData("bus_silent@90s", "bus_silent@90s")]
    [InlineData("bus_silent=2.5@1500ms", "bus_silent=2.5@1.5s")]
    [InlineData("trouble_code=brakes@2min", "trouble_code=brakes@120s")]
    [InlineData("ignores=doors.ajar", "ignores=doors.ajar")]
    public void A_fault_reads_and_writes(string text, string written)
    {
        var parse = FaultText.Parse(text);
        Assert.True(parse.IsRight, parse.Why);
        Assert.Equal(written, parse.Fault.ToString());
        Assert.Equal(parse.Fault, FaultText.Parse(written).Fault);
    }

    [Theory]
    [InlineData("lamp_opne", "there is no fault point 'lamp_opne' – nearest: lamp_open")]
    [InlineData("lamp_open=low_lft", "there is no place of lamp_open 'low_lft' – nearest: low_left")]
    [InlineData("flasher_dead=3", "flasher_dead takes no number")]
    [InlineData("battery_voltage=twelve", "'twelve' is no number of battery_voltage in V")]
    [InlineData("battery_voltage=1e999", "is no number")]
    [InlineData("bus_silent@soon", "'soon' is no time: write 90s, 1500ms or 2min")]
    [InlineData("ignores", "ignores wants a step")]
    public void What_is_wrong_is_said_with_what_may_have_been_meant(string text, string start)
    {
        var parse = FaultText.Parse(text);
        Assert.False(parse.IsRight);
        Assert.Contains(start, parse.Why);
    }

    [Fact]
    public void Names_are_unique_and_plain() =>
        Assert.All(FaultCatalogue.All, point =>
        {
            Assert.Matches("^[a-z][a-z_]*$", point.Name);
            Assert.Same(point, FaultCatalogue.Find(point.Name));
        });

    [Fact]
    public void Every_kind_of_fault_has_a_point() =>
        Assert.Equal(Enum.GetValues<FaultKind>(), FaultCatalogue.All.Select(point => point.Kind).Distinct().Order());

    [Fact]
    public void A_fault_in_a_part_that_is_not_there_is_handed_back()
    {
        var (_, vehicle) = Vans.New(Vans.Electric, 1, "oil_pressure=0.5", "unit_silent=tow", "lamp_open=plate");
        Assert.Equal(["oil_pressure=0.5", "unit_silent=tow"], vehicle.Unsuitable.Select(fault => fault.ToString()));
    }

    [Fact]
    public void A_fault_begins_at_its_time()
    {
        var (time, vehicle) = Vans.New("horn_open@10s");
        time.Advance(TimeSpan.FromSeconds(9.9));
        Assert.False(vehicle.Van.Horn.IsOpen);
        time.Advance(TimeSpan.FromSeconds(0.2));
        Assert.True(vehicle.Van.Horn.IsOpen);
    }
}
