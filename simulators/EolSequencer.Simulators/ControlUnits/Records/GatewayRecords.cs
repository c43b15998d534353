using System.Text;
using EolSequencer.Simulators.Physics;
using EolSequencer.Wire.Uds;
using static EolSequencer.Simulators.ControlUnits.Records.CommonRecords;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>Gateway and body: identity, coding, lamps, horn, mirrors.</summary>
internal static class GatewayRecords
{
    private const byte CodingLevel = 3;
    private const ushort FirstLamp = 0x2210;
    private const ushort FirstMirror = 0x2240;

    public static DataRecord[] All { get; } = With(
    [
        Vin with { Write = WriteVin, WriteLevel = CodingLevel },
        Text(0x2108, 8, unit => unit.Memory.Coding) with { Write = WriteCoding, WriteLevel = CodingLevel },
        Word(0x2104, 0.01, (unit, now) => unit.Van.Lamps.SupplyCurrent(now) + unit.Van.PowerNet.LampFeedError),
        Byte(0x2106, 1, 0, (unit, _) => unit.Network.CountHeard()),
        YesNo(0x210A, (unit, _) => unit.Van.Body.IsImmobiliserPaired),
        Byte(0x210B, 1, 0, (unit, _) => unit.Van.Body.KeyCount),
        YesNo(0x210C, (unit, _) => unit.Van.Body.IsInTransportMode),
        new(0x2120, 8, TyrePressures),
        Byte(0x2122, 1, 0, (unit, _) => unit.Van.Body.AntennaMilliAmps),
        YesNo(0x2123, (unit, now) => unit.Van.Body.IsModemRegistered(now)),
        Output(0x2201, (unit, _) => unit.Van.Horn.Sounds, (van, on) => van.Horn.Take(on)),
        .. Lamps(),
        .. Mirrors(),
    ]);

    private static IEnumerable<DataRecord> Lamps()
    {
        for (var i = 0; i < Physics.Lamps.Controllable; i++)
        {
            var lamp = i;
            yield return Output((ushort)(FirstLamp + i), (unit, _) => unit.Van.Lamps[lamp].IsSwitchedOn, (van, on) => van.Lamps.Take(lamp, on));
        }
    }

    private static IEnumerable<DataRecord> Mirrors()
    {
        for (var i = 0; i < Physics.Mirrors.Names.Count; i++)
        {
            var axis = i;
            yield return Position(
                (ushort)(FirstMirror + i), 200, 0.5, (unit, now) => unit.Van.Mirrors.Position(axis, now), (van, percent) => Move(van, axis, percent));
        }
    }

    private static void Move(Van van, int axis, double? percent)
    {
        if (percent is { } target) van.Mirrors.Drive(axis, target);
        else van.Mirrors.Stop(axis);
    }

    private static void TyrePressures(ControlUnit unit, TimeSpan now, Span<byte> record)
    {
        for (var wheel = 0; wheel < 4; wheel++) Raw.Word(record[(2 * wheel)..], unit.Van.Wheels.Pressure[wheel], 0.1);
    }

    private static NegativeCode WriteVin(ControlUnit unit, ReadOnlySpan<byte> record)
    {
        var vin = Encoding.ASCII.GetString(record);
        if (unit.Quirks.WritesAreLost) return NegativeCode.None;
        unit.Memory.Vin = vin;
        unit.Network.PassOnVin(vin);
        return NegativeCode.None;
    }

    private static NegativeCode WriteCoding(ControlUnit unit, ReadOnlySpan<byte> record)
    {
        if (!unit.Quirks.WritesAreLost) unit.Memory.Coding = Encoding.ASCII.GetString(record);
        return NegativeCode.None;
    }
}
