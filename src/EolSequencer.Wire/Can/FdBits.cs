namespace EolSequencer.Wire.Can;

/// <summary>The bits of a CAN FD frame, apart for its two bit rates.</summary>
/// <param name="Nominal">Start of frame to bit-rate switch, and check delimiter to intermission.</param>
/// <param name="Data">From the error state indicator to the end of the check sequence.</param>
/// <remarks>
/// Source: ISO 11898-1:2015, FD frame format. The rate really changes at two sample points, so a time computed from
/// these counts is right within one nominal bit.
/// </remarks>
internal readonly record struct FdBits(int Nominal, int Data)
{
    private const int CheckDelimiter = 1;

    /// <summary>Acknowledge slot and delimiter, end of frame, intermission.</summary>
    public const int Footer = 2 + 7 + FrameBits.Intermission;

    public int Total => Nominal + Data;

    /// <summary>Start of frame to length code.</summary>
    public static int Header(bool isExtended) => isExtended ? 41 : 22;

    /// <summary>Stuff count, check sequence, its fixed stuff bits and its delimiter.</summary>
    public static int CheckField(int dataLength) => (dataLength <= 16 ? 4 + 17 + 6 : 4 + 21 + 7) + CheckDelimiter;

    public static FdBits Of(in CanFrame frame)
    {
        var data = frame.Data.Span;
        var lengthCode = (uint)DataLength.CodeFor(data.Length);
        var stuffing = new StuffCounter();
        AddArbitration(ref stuffing, frame);
        var inArbitration = stuffing.Count;

        stuffing.Add(lengthCode, 5); // the error state indicator in front is 0
        foreach (var value in data)
        {
            stuffing.Add(value);
        }

        var lastBit = (data.IsEmpty ? (int)lengthCode : data[^1]) & 1;
        var inData = stuffing.Count - inArbitration - (stuffing.EndsWithStuffBit(lastBit) ? 1 : 0);
        return new FdBits(
            Header(frame.IsExtended) - 5 + inArbitration + CheckDelimiter + Footer,
            5 + (8 * data.Length) + inData + CheckField(data.Length) - CheckDelimiter);
    }

    // Base:     SOF 0, identifier 11, RRS 0, IDE 0, FDF 1, res 0, BRS                                       = 17 bits
    // Extended: SOF 0, identifier 11, SRR 1, IDE 1, identifier 18, RRS 0, FDF 1, res 0, BRS                 = 36 bits
    private static void AddArbitration(ref StuffCounter stuffing, in CanFrame frame)
    {
        var id = frame.Id.Value;
        var end = 0b100u | (frame.HasBitRateSwitch ? 1u : 0u);
        stuffing.Add(0b0101_0101); // fill bits, so that the start of frame opens a run
        if (frame.IsExtended)
        {
            stuffing.Add(((id >> 18) << 2) | 0b11, 14);
            stuffing.Add(((id & 0x3FFFF) << 4) | end, 22);
        }
        else
        {
            stuffing.Add((id << 5) | end, 17);
        }
    }
}
