using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits.Obd;

/// <summary>Writes the present data bytes of a parameter.</summary>
internal delegate void ObdReader(Van van, TimeSpan now, Span<byte> data);

/// <summary>A parameter of service 01 that a unit supports.</summary>
/// <param name="Id">Its number (SAE J1979).</param>
/// <param name="Length">Its data bytes.</param>
/// <param name="Read">What they are.</param>
internal sealed record ObdParameter(byte Id, int Length, ObdReader Read)
{
    /// <summary>One byte: value × multiplier + offset, cut to 0 to 255.</summary>
    public static ObdParameter Byte(byte id, double multiplier, double offset, Func<Van, TimeSpan, double> read) =>
        new(id, 1, (van, now, data) => data[0] = (byte)Math.Clamp(Math.Round((read(van, now) * multiplier) + offset), 0, 255));

    /// <summary>Two bytes, most significant first: value × multiplier, cut to 0 to 65535.</summary>
    public static ObdParameter Word(byte id, double multiplier, Func<Van, TimeSpan, double> read) =>
        new(id, 2, (van, now, data) =>
        {
            var raw = (int)Math.Clamp(Math.Round(read(van, now) * multiplier), 0, 65535);
            (data[0], data[1]) = ((byte)(raw >> 8), (byte)raw);
        });
}
