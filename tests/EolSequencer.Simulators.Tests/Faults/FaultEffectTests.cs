using EolSequencer.Simulators.Faults;

namespace EolSequencer.Simulators.Tests.Faults;

/// <summary>A rehearsal that injects a fault without effect would praise a sequence for nothing.</summary>
public sealed class FaultEffectTests
{
    private static readonly Dictionary<string, IReadOnlyList<string>> Good = new()
    {
        ["petrol"] = Examination.Of(Vans.Petrol, 7),
        ["electric"] = Examination.Of(Vans.Electric, 7),
    };

    public static TheoryData<string, string> Possible()
    {
        var data = new TheoryData<string, string>();
        var petrol = FaultCatalogue.PossibleOn(Vans.Petrol).Select(fault => fault.ToString()).ToHashSet();
        foreach (var fault in petrol) data.Add("petrol", fault);
        foreach (var fault in FaultCatalogue.PossibleOn(Vans.Electric).Select(fault => fault.ToString()))
        {
            if (!petrol.Contains(fault)) data.Add("electric", fault);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Possible))]
    public void Each_fault_shows_in_an_examination_of_everything(string vehicle, string fault)
    {
        var options = vehicle == "petrol" ? Vans.Petrol : Vans.Electric;
        Assert.True(Examination.Shows(Vans.Fault(fault), options, 7, Good[vehicle]), $"{fault} changes nothing");
    }
}
