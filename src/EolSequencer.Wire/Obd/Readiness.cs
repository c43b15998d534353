namespace EolSequencer.Wire.Obd;

/// <summary>Parameter 01: malfunction lamp, number of codes, and which self-tests are complete.</summary>
/// <param name="IsLampOn">The malfunction lamp is commanded on.</param>
/// <param name="CodeCount">Confirmed emissions codes, 0 to 127.</param>
/// <param name="IsCompressionIgnition">True for diesel engines: their self-tests are others.</param>
/// <param name="SelfTests">The supported self-tests, each complete or not.</param>
/// <remarks>Source: SAE J1979, parameter 01. On the bus a set bit means "not complete"; here it is turned round.</remarks>
public sealed record Readiness(bool IsLampOn, int CodeCount, bool IsCompressionIgnition, IReadOnlyList<SelfTestState> SelfTests)
{
    /// <summary>The number of the parameter.</summary>
    public const byte ParameterId = 0x01;

    /// <summary>Its data bytes.</summary>
    public const int Length = 4;

    private const int CompressionBit = 3;

    private static readonly SelfTest?[] Continuous = [SelfTest.Misfire, SelfTest.FuelSystem, SelfTest.Components];

    private static readonly SelfTest?[] Spark =
    [
        SelfTest.Catalyst, SelfTest.HeatedCatalyst, SelfTest.EvaporativeSystem, SelfTest.SecondaryAir,
        SelfTest.ParticulateFilterOrRefrigerant, SelfTest.OxygenSensor, SelfTest.OxygenSensorHeater, SelfTest.ExhaustGasRecirculation,
    ];

    private static readonly SelfTest?[] Compression =
    [
        SelfTest.HydrocarbonCatalyst, SelfTest.NitrogenOxideAftertreatment, null, SelfTest.BoostPressure,
        null, SelfTest.ExhaustGasSensor, SelfTest.ParticulateFilter, SelfTest.ExhaustGasRecirculation,
    ];

    /// <param name="data">The four data bytes.</param>
    public static Readiness Read(ReadOnlySpan<byte> data)
    {
        var (a, b, c, d) = (data[0], data[1], data[2], data[3]);
        var isCompression = IsSet(b, CompressionBit);
        return new Readiness(
            IsSet(a, 7),
            a & 0x7F,
            isCompression,
            [.. States(Continuous, supported: b, incomplete: b >> 4), .. States(isCompression ? Compression : Spark, supported: c, incomplete: d)]);
    }

    /// <summary>The four data bytes.</summary>
    public byte[] Write()
    {
        var others = IsCompressionIgnition ? Compression : Spark;
        return
        [
            (byte)((IsLampOn ? 0x80 : 0) | CodeCount),
            (byte)(Bits(Continuous, _ => true) | (Bits(Continuous, state => !state.IsComplete) << 4) | (IsCompressionIgnition ? 1 << CompressionBit : 0)),
            (byte)Bits(others, _ => true),
            (byte)Bits(others, state => !state.IsComplete),
        ];
    }

    private static IEnumerable<SelfTestState> States(SelfTest?[] order, int supported, int incomplete)
    {
        for (var bit = 0; bit < order.Length; bit++)
        {
            if (order[bit] is { } test && IsSet(supported, bit))
            {
                yield return new SelfTestState(test, !IsSet(incomplete, bit));
            }
        }
    }

    private int Bits(SelfTest?[] order, Predicate<SelfTestState> counts)
    {
        var bits = 0;
        foreach (var state in SelfTests)
        {
            var bit = Array.IndexOf(order, state.SelfTest);
            bits |= bit >= 0 && counts(state) ? 1 << bit : 0;
        }

        return bits;
    }

    private static bool IsSet(int bits, int bit) => ((bits >> bit) & 1) == 1;
}
