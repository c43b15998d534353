using EolSequencer.Model.Judging;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The station's own instruments: faults that say nothing about the vehicle.</summary>
internal static class BenchPoints
{
    private const string Meter = "dc-meter";
    private const string Line = "line-signal";
    private const string SoundMeter = "sound-meter";

    public static IEnumerable<FaultPoint> All =>
    [
        One("meter_silent", FaultKind.SilentUnit, StepClass.Function, "the meter does not answer",
            target => target.Bench.MeterIsSilent = true).Of(Meter),
        OneNumber("meter_offset", FaultKind.Drift, StepClass.Function, "every current of the meter is off by", 0.6, "A",
            (target, amps) => target.Bench.MeterOffset = amps).Of(Meter),
        One("meter_overload", FaultKind.Short, StepClass.Function, "the meter reports overload",
            target => target.Bench.MeterIsOverloaded = true).Of(Meter),
        One("meter_zero_refused", FaultKind.SilentUnit, StepClass.Function, "the meter cannot be set to zero",
            target => target.Bench.MeterDoesNotZero = true).Of(Meter),
        One("line_deaf", FaultKind.SilentUnit, StepClass.Function, "the line takes nothing over",
            target => target.Bench.LineIsDeaf = true).Of(Line),
        One("sound_meter_silent", FaultKind.SilentUnit, StepClass.Safety, "the sound meter starts and never gives a result",
            target => target.Bench.SoundMeterIsSilent = true).Of(SoundMeter),
    ];
}
