using System.Collections.Frozen;
using EolSequencer.Model.Units;

namespace EolSequencer.Wire.Obd;

/// <summary>The parameters of services 01 and 02 that are decoded here.</summary>
/// <remarks>Source: SAE J1979 and ISO 15031-5, annex B, parameter definitions.</remarks>
public static class ParameterTable
{
    private static readonly FrozenDictionary<byte, Parameter> ById = Rows().ToFrozenDictionary(row => row.Id);

    /// <summary>A parameter; null when it is none of the table.</summary>
    public static Parameter? Find(byte id) => ById.GetValueOrDefault(id);

    /// <summary>All of them, by number.</summary>
    public static IEnumerable<Parameter> All => ById.Values.OrderBy(row => row.Id);

    private static IEnumerable<Parameter> Rows() =>
    [
        .. SupportBitmap.Parameters.Select(id => new Parameter(id, 4, [])),
        new Parameter(Readiness.ParameterId, 4, []),
        Percent(0x04, "calculated load"),
        One(0x05, "coolant temperature", "°C", offset: -40),
        Trim(0x06, "short-term fuel trim, bank 1"),
        Trim(0x07, "long-term fuel trim, bank 1"),
        Trim(0x08, "short-term fuel trim, bank 2"),
        Trim(0x09, "long-term fuel trim, bank 2"),
        One(0x0A, "fuel rail pressure, gauge", "kPa", multiplier: 3),
        One(0x0B, "intake manifold pressure", "kPa"),
        Two(0x0C, "engine speed", "rpm", divisor: 4),
        One(0x0D, "vehicle speed", "km/h"),
        One(0x0E, "ignition advance", "deg", divisor: 2, offset: -64),
        One(0x0F, "intake air temperature", "°C", offset: -40),
        Two(0x10, "air flow", "g/s", divisor: 100),
        Percent(0x11, "throttle position"),
        .. Enumerable.Range(0x14, 8).Select(id => OxygenSensor((byte)id)),
        One(0x1C, "diagnostic standard, as a code", null),
        Two(0x1F, "time since engine start", "s"),
        Two(0x21, "distance with the malfunction lamp on", "km"),
        Two(0x22, "fuel rail pressure, relative to manifold", "kPa", multiplier: 0.079m),
        Two(0x23, "fuel rail pressure, high pressure", "kPa", multiplier: 10),
        Percent(0x2E, "evaporative purge"),
        Percent(0x2F, "fuel level"),
        Two(0x31, "distance since codes were cleared", "km"),
        One(0x33, "barometric pressure", "kPa"),
        .. Enumerable.Range(0x3C, 4).Select(id => Two((byte)id, "catalyst temperature", "°C", divisor: 10, offset: -40)),
        Two(0x42, "control module voltage", "V", divisor: 1000),
        Two(0x43, "absolute load", "%", multiplier: 100, divisor: 255),
        Two(0x44, "commanded air-fuel equivalence ratio", null, divisor: 32768),
        Percent(0x45, "relative throttle position"),
        One(0x46, "ambient air temperature", "°C", offset: -40),
        Percent(0x49, "accelerator pedal position D"),
        One(0x51, "fuel type, as a code", null),
        One(0x5C, "engine oil temperature", "°C", offset: -40),
        Two(0x5E, "fuel rate", "L/h", divisor: 20),
        One(0x61, "demanded torque", "%", offset: -125),
        One(0x62, "actual torque", "%", offset: -125),
        Two(0x63, "reference torque", "N·m"),
    ];

    private static Parameter Percent(byte id, string name) => One(id, name, "%", multiplier: 100, divisor: 255);

    private static Parameter Trim(byte id, string name) => One(id, name, "%", multiplier: 100, divisor: 128, offset: -100);

    private static Parameter One(byte id, string name, string? unit, decimal multiplier = 1, decimal divisor = 1, decimal offset = 0) =>
        new(id, 1, [Value(name, unit, 0, 1, multiplier, divisor, offset)]);

    private static Parameter Two(byte id, string name, string? unit, decimal multiplier = 1, decimal divisor = 1, decimal offset = 0) =>
        new(id, 2, [Value(name, unit, 0, 2, multiplier, divisor, offset)]);

    private static Parameter OxygenSensor(byte id) => new(id, 2,
    [
        Value("oxygen sensor voltage", "V", 0, 1, 1, 200, 0),
        Value("oxygen sensor fuel trim", "%", 1, 1, 100, 128, -100) with { NotUsed = 0xFF },
    ]);

    private static ParameterValue Value(string name, string? unit, int first, int count, decimal multiplier, decimal divisor, decimal offset) =>
        new(name, unit is null ? null : UnitTable.Required(unit), first, count)
        {
            Multiplier = multiplier,
            Divisor = divisor,
            Offset = offset,
        };
}
