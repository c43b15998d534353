using System.Globalization;

namespace EolSequencer.Wire.Can;

/// <summary>Between IEEE 754 binary32 and decimal numbers.</summary>
internal static class Float32
{
    // The longest text, -1.2345679E-38, has 14 characters.
    private const int TextLength = 16;

    /// <summary>The shortest decimal number that reads back as the same binary one; false when there is none.</summary>
    public static bool TryToDecimal(uint bits, out decimal number)
    {
        Span<char> text = stackalloc char[TextLength];
        number = 0;
        var value = BitConverter.UInt32BitsToSingle(bits);
        return float.IsFinite(value)
            && value.TryFormat(text, out var length, "R", CultureInfo.InvariantCulture)
            && decimal.TryParse(text[..length], NumberStyles.Float, CultureInfo.InvariantCulture, out number);
    }

    public static uint FromDecimal(decimal number) => BitConverter.SingleToUInt32Bits((float)number);
}
