using EolSequencer.Model.Judging;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Wire.TroubleCodes;
using EolSequencer.Wire.Uds;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>Control units: what they are, what they remember, how they behave on the bus.</summary>
internal static class UnitPoints
{
    private static readonly string[] Controlled =
        [.. UnitTypes.All.Where(type => Array.Exists(type.Records, record => record.Take is not null)).Select(type => type.Name)];

    public static IEnumerable<FaultPoint> All =>
    [
        ForUnit("unit_silent", FaultKind.SilentUnit, StepClass.Safety, "the unit is dead: no answer and none of its frames",
            (_, unit) => unit.Die()),
        ForUnit("wrong_software", FaultKind.WrongPart, StepClass.Safety, "the unit runs another software than released",
            (_, unit) => unit.Memory.Software = Other(unit.Memory.Software)),
        ForUnit("wrong_part", FaultKind.WrongPart, StepClass.Function, "another part than ordered is fitted",
            (_, unit) => unit.Memory.Part = Other(unit.Memory.Part)),
        ForUnit("serial_blank", FaultKind.WrongPart, StepClass.Other, "the unit has no serial number",
            (_, unit) => unit.Memory.Serial = ""),
        ForUnit("trouble_code", FaultKind.WrongPart, StepClass.Safety, "the unit finds a fault again and again and stores its code",
            (_, unit) => unit.Memory.Troubles.Find(CodeOf(unit))),
        ForUnit("old_trouble_code", FaultKind.WrongPart, StepClass.Other, "a code of the past is stored; clearing removes it",
            (_, unit) => unit.Memory.Troubles.Remember(CodeOf(unit))),
        ForUnitNumber("boot_time", FaultKind.Delayed, StepClass.Function, "the unit needs that long after a reset", 12.5, "s",
            (_, unit, seconds) => unit.BootTime = TimeSpan.FromSeconds(seconds)),
        ForUnitNumber("answers_late", FaultKind.Delayed, StepClass.Function, "every answer comes that much later, without a word", 0.4, "s",
            (_, unit, seconds) => unit.Quirks.ExtraDelay = TimeSpan.FromSeconds(seconds)),
        ForUnitNumber("busy", FaultKind.Delayed, StepClass.Other, "so many requests are answered with \"busy, repeat request\"", 2, "",
            (_, unit, count) => unit.Quirks.BusyAnswers = (int)count),
        ForUnit("pends_for_ever", FaultKind.Delayed, StepClass.Function, "the unit says \"response pending\" for ever",
            (_, unit) => unit.Quirks.PendsForEver = true),
        ForUnit("short_answer", FaultKind.WrongCoding, StepClass.Function, "every record that is read is one byte short",
            (_, unit) => unit.Quirks.MissingBytes = 1),
        ForUnit("reads_refused", FaultKind.SilentUnit, StepClass.Function, "the unit refuses every read: conditions not correct",
            (_, unit) => unit.Quirks.ReadRefusal = NegativeCode.ConditionsNotCorrect),
        ForUnit("session_refused", FaultKind.SilentUnit, StepClass.Function, "the unit refuses the extended session",
            (_, unit) => unit.Quirks.RefusesSession = true),
        ForUnit("reset_refused", FaultKind.SilentUnit, StepClass.Function, "the unit refuses to restart",
            (_, unit) => unit.Quirks.RefusesReset = true),
        One("node_unheard", FaultKind.OpenCircuit, StepClass.Function, "the gateway does not hear one of the units",
            target => target.Network.Unheard = 1),
        ForUnit("clear_refused", FaultKind.SilentUnit, StepClass.Safety, "the unit refuses to clear its trouble codes",
            (_, unit) => unit.Quirks.ClearFails = true),
        For("outputs_refused", FaultKind.SilentUnit, StepClass.Function, "the unit refuses to let the tester take outputs over", Controlled,
            (target, unit) => target.Network.Find(Controlled[unit])!.Quirks.RefusesOutputs = true, IsUnitFitted),
        For("outputs_kept", FaultKind.Stuck, StepClass.Safety, "the unit refuses to give outputs back", Controlled,
            (target, unit) => target.Network.Find(Controlled[unit])!.Quirks.KeepsOutputs = true, IsUnitFitted),
    ];

    private static string Other(string text) => text.Length == 0 ? "X" : text[..^1] + (text[^1] == 'X' ? 'Y' : 'X');

    // A body code whose digits tell the units apart; the third byte says "general electrical failure".
    private static TroubleCode CodeOf(ControlUnit unit) => new((ushort)(0x9500 + Array.IndexOf(UnitTypes.All, unit.Type)), 0x01);
}
