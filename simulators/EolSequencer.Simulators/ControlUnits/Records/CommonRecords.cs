namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>The records that every unit has (identifiers of ISO 14229-1, annex C.1).</summary>
internal static class CommonRecords
{
    /// <summary>The vehicle number, where a copy is kept.</summary>
    public static DataRecord Vin { get; } = Text(0xF190, 17, unit => unit.Memory.Vin);

    private static readonly DataRecord[] All =
    [
        new(0xF186, 1, (unit, _, record) => record[0] = (byte)unit.Session.Session),
        Text(0xF187, 10, unit => unit.Memory.Part),
        Text(0xF18C, 10, unit => unit.Memory.Serial),
        Text(0xF195, 12, unit => unit.Memory.Software),
    ];

    /// <summary>The common records with those of one unit.</summary>
    public static DataRecord[] With(params DataRecord[] own) => [.. own, .. All];

    public static DataRecord Text(ushort identifier, int length, Func<ControlUnit, string> text) =>
        new(identifier, length, (unit, _, record) => Raw.Text(record, text(unit)));

    public static DataRecord YesNo(ushort identifier, Func<ControlUnit, TimeSpan, bool> read) =>
        new(identifier, 1, (unit, now, record) => record[0] = read(unit, now) ? (byte)1 : (byte)0);

    public static DataRecord Byte(ushort identifier, double scale, double offset, Func<ControlUnit, TimeSpan, double> read) =>
        new(identifier, 1, (unit, now, record) => record[0] = Raw.Byte(read(unit, now), scale, offset));

    /// <summary>°C with an offset of -40, where the two highest values are no temperature.</summary>
    public static DataRecord Celsius(ushort identifier, Func<ControlUnit, TimeSpan, double> read) =>
        new(identifier, 1, (unit, now, record) => record[0] = Raw.Byte(Math.Min(read(unit, now), 213), 1, -40));

    public static DataRecord Word(ushort identifier, double scale, Func<ControlUnit, TimeSpan, double> read) =>
        new(identifier, 2, (unit, now, record) => Raw.Word(record, read(unit, now), scale));

    /// <summary>An output that is on or off.</summary>
    public static DataRecord Output(ushort identifier, Func<ControlUnit, TimeSpan, bool> read, Action<Physics.Van, bool?> take) =>
        YesNo(identifier, read) with { Take = (van, state) => take(van, state is null ? null : state != 0) };

    /// <summary>An output with a position or share in steps of one byte.</summary>
    public static DataRecord Position(
        ushort identifier, byte highest, double scale, Func<ControlUnit, TimeSpan, double> read, Action<Physics.Van, double?> take) =>
        Byte(identifier, scale, 0, read) with
        {
            Take = (van, state) => take(van, state * scale),
            HighestState = highest,
        };
}
