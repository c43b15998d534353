using static EolSequencer.Model.Units.Dimension;

namespace EolSequencer.Model.Units;

/// <summary>The rows of the unit table.</summary>
/// <remarks>
/// Factors: SI Brochure 9th edition (prefixes, tables 8 and 9) and NIST SP 811 appendix B for lb, lbf, in, ft, mile, kgf, all
/// exact by definition. psi, rad and mrad have no finite decimal factor and are given to 18 digits, so that a reading times a
/// factor still fits a decimal.
/// </remarks>
internal static class UnitEntries
{
    public static IEnumerable<Unit> All() =>
    [
        Of("mV", Voltage, 0.001m, "mV"),
        Of("V", Voltage, 1m, "V"),
        Of("kV", Voltage, 1000m, "kV"),
        Of("µA", Current, 0.000001m, "uA", "\u03BCA", "uA"),
        Of("mA", Current, 0.001m, "mA"),
        Of("A", Current, 1m, "A"),
        Of("mohm", Resistance, 0.001m, "mohm", "m\u03A9", "m\u2126", "mOhm"),
        Of("ohm", Resistance, 1m, "ohm", "\u03A9", "\u2126", "Ohm"),
        Of("kohm", Resistance, 1000m, "kohm", "k\u03A9", "k\u2126", "kOhm"),
        Of("Mohm", Resistance, 1000000m, "Mohm", "M\u03A9", "M\u2126", "MOhm"),
        Of("ohm/V", ResistancePerVoltage, 1m, "ohm_V", "\u03A9/V", "\u2126/V", "Ohm/V"),
        Of("W", Power, 1m, "W"),
        Of("kW", Power, 1000m, "kW"),
        Of("W·h", Energy, 1m, "Wh", "W.h", "W\u22C5h", "Wh"),
        Of("kW·h", Energy, 1000m, "kWh", "kW.h", "kW\u22C5h", "kWh"),
        Of("A·h", Charge, 1m, "Ah", "A.h", "A\u22C5h", "Ah"),

        Of("N", Force, 1m, "N"),
        Of("daN", Force, 10m, "daN"),
        Of("kN", Force, 1000m, "kN"),
        Of("kgf", Force, 9.80665m, "kgf"),
        Of("lbf", Force, 4.4482216152605m, "lbf"),
        Of("N·m", Torque, 1m, "Nm", "N.m", "N\u22C5m", "Nm"),
        Of("lbf·ft", Torque, 1.3558179483314004m, "lbf_ft", "lbf.ft", "lbf\u22C5ft"),
        Of("Pa", Pressure, 1m, "Pa"),
        Of("mbar", Pressure, 100m, "mbar"),
        Of("kPa", Pressure, 1000m, "kPa"),
        Of("bar", Pressure, 100000m, "bar"),
        Of("MPa", Pressure, 1000000m, "MPa"),
        Of("Mbar", Pressure, 100000000000m, "Mbar"),
        Of("psi", Pressure, 6894.75729316836134m, "psi"),
        Of("mbar·L/s", LeakRate, 1m, "mbar_L_s", "mbar.L/s", "mbar\u22C5L/s", "mbar·l/s"),
        Of("Pa·m³/s", LeakRate, 10m, "Pa_m3_s", "Pa.m³/s", "Pa\u22C5m³/s", "Pa.m3/s"),

        Of("km/h", Speed, 1m, "km_h"),
        Of("m/s", Speed, 3.6m, "m_s"),
        Of("mph", Speed, 1.609344m, "mph"),
        Of("m/s²", Acceleration, 1m, "m_s2", "m/s2", "m/s^2"),
        Of("deg/s", RotationalSpeed, 1m, "deg_s", "°/s"),
        Of("rpm", RotationalSpeed, 6m, "rpm"),
        Of("1/min", Frequency, 1m, "per_min", "/min", "per min"),
        Of("Hz", Frequency, 60m, "Hz"),
        Of("kHz", Frequency, 60000m, "kHz"),
        Of("µs", Time, 0.000001m, "us", "\u03BCs", "us"),
        Of("ms", Time, 0.001m, "ms"),
        Of("s", Time, 1m, "s"),
        Of("min", Time, 60m, "minutes"),
        Of("h", Time, 3600m, "hours"),

        Of("µm", Length, 0.000001m, "um", "\u03BCm", "um"),
        Of("mm", Length, 0.001m, "mm"),
        Of("cm", Length, 0.01m, "cm"),
        Of("m", Length, 1m, "m"),
        Of("km", Length, 1000m, "km"),
        Of("in", Length, 0.0254m, "inch"),
        Of("ft", Length, 0.3048m, "ft"),
        Of("1/m", Opacity, 1m, "per_m", "/m"),
        Of("′", Angle, 1m, "arcmin", "'", "arcmin"),
        Of("deg", Angle, 60m, "deg", "°"),
        Of("mrad", Angle, 3.43774677078493925m, "mrad"),
        Of("rad", Angle, 3437.74677078493925m, "rad"),

        Of("g", Mass, 0.001m, "g"),
        Of("kg", Mass, 1m, "kg"),
        Of("t", Mass, 1000m, "t"),
        Of("lb", Mass, 0.45359237m, "lb"),
        Of("mL", Volume, 0.001m, "mL", "ml", "cm³", "cm3"),
        Of("L", Volume, 1m, "L", "l"),
        Of("mL/min", VolumeFlow, 0.06m, "mL_min", "ml/min", "cm³/min", "cm3/min"),
        Of("L/min", VolumeFlow, 60m, "L_min", "l/min"),
        Of("L/h", VolumeFlow, 1m, "L_h", "l/h"),
        Of("g/s", MassFlow, 1m, "g_s"),

        Affine("K", 1.8m, -459.67m, "kelvin"),
        Affine("°C", 1.8m, 32m, "celsius", "degC"),
        Affine("°F", 1m, 0m, "fahrenheit", "degF"),
        Of("K diff", TemperatureDifference, 1m, "kelvin_diff", "ΔK"),

        Of("%", Ratio, 1m, "percent"),
        Of("ppm", Ratio, 0.0001m, "ppm"),
        Of("m/km", Ratio, 0.1m, "m_km", "mm/m"),
        Of("% vol", VolumeShare, 1m, "percent_vol"),
        Of("ppm vol", VolumeShare, 0.0001m, "ppm_vol"),
        Of("dB", Level, 1m, "dB"),
        Of("dB(A)", SoundLevel, 1m, "dBA"),
        Of("cd", LuminousIntensity, 1m, "cd"),
        Of("lx", Illuminance, 1m, "lx"),
    ];

    private static Unit Of(string symbol, Dimension dimension, decimal factor, string expressionName, params string[] otherSpellings) =>
        new(symbol, dimension, factor, 0m, expressionName, [.. otherSpellings]);

    private static Unit Affine(string symbol, decimal factor, decimal offset, string expressionName, params string[] otherSpellings) =>
        new(symbol, Dimension.Temperature, factor, offset, expressionName, [.. otherSpellings]);
}
