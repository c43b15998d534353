using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Devices;

/// <summary>Type and unit of the service 01 parameters that are decoded.</summary>
/// <remarks>Source: SAE J1979 (ISO 15031-5), parameters of service 01 with one value each.</remarks>
public static class ObdParameters
{
    /// <summary>Type and unit of a parameter; null when it is not decoded.</summary>
    /// <param name="parameter">0 to 0xFF.</param>
    public static ValueShape? ShapeOf(int parameter) => parameter switch
    {
        0x04 or 0x11 or 0x2E or 0x2F or 0x43 or 0x45 or 0x49 or 0x61 or 0x62 => In("%"),
        >= 0x06 and <= 0x09 => In("%"),
        0x05 or 0x0F or 0x46 or 0x5C => In("°C"),
        >= 0x3C and <= 0x3F => In("°C"),
        0x0A or 0x0B or 0x22 or 0x23 or 0x33 => In("kPa"),
        0x0C => In("rpm"),
        0x0D => In("km/h"),
        0x0E => In("deg"),
        0x10 => In("g/s"),
        0x1F => In("s"),
        0x21 or 0x31 => In("km"),
        0x42 => In("V"),
        0x1C or 0x44 or 0x51 => ValueShape.Count,
        0x5E => In("L/h"),
        0x63 => In("N·m"),
        _ => null,
    };

    private static ValueShape In(string unit) => ValueShape.Number(UnitTable.Required(unit));
}
