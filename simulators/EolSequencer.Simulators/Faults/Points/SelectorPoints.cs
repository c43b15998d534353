using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Physics;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Gear selector and rear camera.</summary>
internal static class SelectorPoints
{
    private static readonly string[] PictureFaults = ["dark", "blurred", "shifted"];

    public static IEnumerable<FaultPoint> All =>
    [
        For("selector_dead", FaultKind.OpenCircuit, StepClass.Safety, "the selected position is not reported", Selector.Names,
            (target, position) => target.Van.Selector.Dead[position] = true),
        OneNumber("gear_in_park", FaultKind.WrongCoding, StepClass.Function, "the transmission reports this gear in park", 3, "",
            (target, gear) => target.Van.Selector.GearInPark = (int)gear & 0xF),
        OneNumber("rear_picture", FaultKind.Delayed, StepClass.Safety, "the rear picture comes that long after reverse", 2.6, "s",
            (target, seconds) => target.Van.Selector.PictureSeconds = seconds),
        For("rear_picture_poor", FaultKind.WrongPart, StepClass.Safety, "the rear picture is poor: only a person sees it", PictureFaults,
            (target, fault) => target.Van.Selector.PictureFault = PictureFaults[fault]),
    ];
}
