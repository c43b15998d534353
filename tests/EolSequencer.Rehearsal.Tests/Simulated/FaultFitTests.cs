using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Tests.Simulated;

/// <summary>A fault that nothing can show looks like one that every step has missed.</summary>
public sealed class FaultFitTests
{
    [Theory]
    [InlineData("trailer_not_seen", "the vehicle of order FV-100231 has no such part – name an order whose vehicle has it")]
    [InlineData("line_deaf", "'small' uses no line-signal, so no channel of it shows that – leave it out, or read such a device in a step")]
    [InlineData("ignores=body.hod", "this vehicle has no step 'body.hod' – nearest that it can be put into: body.hood, identity.plates")]
    [InlineData("misjudges=body.hood", "at step 'body.hood' there is nothing for a person that could go wrong like this – nearest that it can be put into: identity.plates")]
    [InlineData("meter_silent", null)]
    [InlineData("lamp_open=tail_left", null)]
    [InlineData("misjudges=identity.plates", null)]
    public void What_cannot_show_is_told_with_what_to_try(string fault, string? why) =>
        Assert.Equal(why, FaultFit.WhyUnseen(FaultText.Parse(fault).Fault!, SmallPlant.First.Sequence, DemoPlant.Orders[0]));

    [Fact]
    public void The_demo_sequence_uses_every_instrument_that_can_have_a_fault()
    {
        foreach (var order in DemoPlant.Orders)
        {
            Assert.All(FaultCatalogue.PossibleOn(VehicleFacts.Of(order).Options), fault => Assert.Null(FaultFit.WhyUnseen(fault, DemoPlant.Startup.Sequence!, order)));
        }
    }
}
