using System.Buffers.Binary;
using System.Text;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>Puts values into bytes the way the units of this vehicle do. The all-ones value means "no value".</summary>
internal static class Raw
{
    /// <summary>One byte: (value - offset) / scale, rounded, 0 to 254; a value that is not a number gives 255.</summary>
    public static byte Byte(double value, double scale, double offset = 0) => (byte)Count(value, scale, offset, 254, 255);

    /// <summary>Two bytes, most significant first, 0 to 65534; not a number gives 65535.</summary>
    public static void Word(Span<byte> into, double value, double scale, double offset = 0) =>
        BinaryPrimitives.WriteUInt16BigEndian(into, (ushort)Count(value, scale, offset, 65534, 65535));

    /// <summary>Two bytes, least significant first.</summary>
    public static void WordLittle(Span<byte> into, double value, double scale) =>
        BinaryPrimitives.WriteUInt16LittleEndian(into, (ushort)Count(value, scale, 0, 65534, 65535));

    /// <summary>Two bytes with a sign, least significant first, -32768 to 32766.</summary>
    public static void SignedWordLittle(Span<byte> into, double value, double scale) =>
        BinaryPrimitives.WriteInt16LittleEndian(into, (short)Math.Clamp(Math.Round(value / scale), -32768, 32766));

    /// <summary>ASCII text with blanks behind it.</summary>
    public static void Text(Span<byte> into, string text)
    {
        into.Fill((byte)' ');
        Encoding.ASCII.GetBytes(text.AsSpan(0, Math.Min(text.Length, into.Length)), into);
    }

    /// <summary>One bit of a frame: bit b lies in byte b div 8 with weight b mod 8.</summary>
    public static void Bit(Span<byte> payload, int bit, bool isSet)
    {
        if (isSet) payload[bit >> 3] |= (byte)(1 << (bit & 7));
    }

    private static int Count(double value, double scale, double offset, int highest, int none) =>
        double.IsNaN(value) ? none : (int)Math.Clamp(Math.Round((value - offset) / scale), 0, highest);
}
