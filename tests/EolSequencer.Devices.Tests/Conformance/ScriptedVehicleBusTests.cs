using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Values;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>The vehicle bus against frames that are written down.</summary>
public sealed class ScriptedVehicleBusTests : DeviceConformance
{
    protected override DeviceRig MakeRig()
    {
        var bench = new BusBench();
        bench.Bus
            .Always("710#0322F190", 5, "718#101462F190544553").Always("710#300000", 3, "718#215456584E303641", "718#2241303030303130")
            .Always("713#03222702", 4, "71B#0562270209A4")
            .Always("713#03222120", 4, "71B#07622120096009FF")
            .Always("710#052F22010301", 3, "718#056F22010301")
            .Always("713#023E00", 2, "71B#027E00");
        return new DeviceRig
        {
            Time = bench.Time,
            Device = bench.Device,
            Steady =
            [
                (Describe.Data("gateway", 0xF190, Describe.Text(17)), "TESTVXN06AA000010"),
                (Describe.Data("brakes", 0x2702, Describe.Number(16, 1, "mm")), "2468 mm"),
            ],
            Indexed = Describe.Data("brakes", 0x2120, Describe.Number(16), Describe.Bits(("left", 0, 16), ("right", 16, 16))),
            ByIndex = [("left", "2400"), ("right", "2559")],
            Silent = Describe.Data("transmission", 0x2140, Describe.Number(8)),
            Action = (Describe.Control("gateway", Describe.YesNo, ("", 0x2201)), TruthValue.Yes),
            SetLink = isUp => bench.Bus.Change(isUp ? LinkState.Up : LinkState.Down),
        };
    }
}
