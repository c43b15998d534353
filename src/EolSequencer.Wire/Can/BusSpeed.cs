namespace EolSequencer.Wire.Can;

/// <summary>The bit rates of a CAN bus.</summary>
public sealed record BusSpeed
{
    /// <summary>A bus with one rate, or with a second one for the data phase of CAN FD frames.</summary>
    /// <param name="nominal">Bits per second, 1 to 1,000,000.</param>
    /// <param name="data">Bits per second of the data phase, not below the nominal rate; the nominal rate when left out.</param>
    public BusSpeed(int nominal, int? data = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nominal, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(nominal, 1_000_000);
        ArgumentOutOfRangeException.ThrowIfLessThan(data ?? nominal, nominal);
        Nominal = nominal;
        Data = data ?? nominal;
    }

    /// <summary>Bits per second of classical frames and of the arbitration phase.</summary>
    public int Nominal { get; }

    /// <summary>Bits per second of the data phase of CAN FD frames with bit-rate switch.</summary>
    public int Data { get; }

    /// <summary>The three bit times after a frame in which nobody may start; <see cref="FrameTime"/> includes them.</summary>
    public TimeSpan Intermission => Time(FrameBits.Intermission, Nominal);

    /// <summary>How long a frame keeps the bus: start of frame to the end of the intermission.</summary>
    /// <returns>Exact to 100 ns, rounded up.</returns>
    public TimeSpan FrameTime(in CanFrame frame)
    {
        if (!frame.HasBitRateSwitch)
        {
            return Time(FrameBits.Of(frame), Nominal);
        }

        var bits = FdBits.Of(frame);
        return Time(bits.Nominal, Nominal) + Time(bits.Data, Data);
    }

    private static TimeSpan Time(int bits, int rate) =>
        new(((bits * TimeSpan.TicksPerSecond) + rate - 1) / rate);
}
