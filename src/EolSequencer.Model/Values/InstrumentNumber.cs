using System.Globalization;

namespace EolSequencer.Model.Values;

/// <summary>Numbers as instruments send them.</summary>
/// <remarks>
/// Source: SCPI-1999 volume 1, 7.2.1.4 and 7.2.1.5 (9.9E37 is infinity, 9.91E37 not a number) over IEEE 488.2 NR1, NR2, NR3.
/// </remarks>
public static class InstrumentNumber
{
    private const double Infinity = 9.9e37;
    private const double NotANumber = 9.91e37;
    private const double Bound = 7.9e28;

    /// <summary>Reads one number such as <c>12</c>, <c>-0.5</c> or <c>+4.0000E+03</c>.</summary>
    /// <param name="text">The answer without its terminator; blanks around it are dropped.</param>
    public static InstrumentReading Parse(ReadOnlySpan<char> text)
    {
        text = text.Trim(" \t");
        if (!IsNumber(text))
        {
            return new InstrumentReading.Malformed($"'{text}' is no number");
        }

        // The size is decided in floating point, where nothing overflows; the value itself stays decimal.
        var size = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
        return Math.Abs(size) switch
        {
            >= NotANumber * 0.9999 and <= NotANumber * 1.0001 => new InstrumentReading.NotANumber(),
            >= Infinity * 0.9999 => new InstrumentReading.Overload(size > 0),
            >= Bound => new InstrumentReading.Malformed($"'{text}' is larger than any quantity here"),
            _ => new InstrumentReading.Number(decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)),
        };
    }

    private static bool IsNumber(ReadOnlySpan<char> text)
    {
        if (text is ['+' or '-', ..]) text = text[1..];
        var exponent = text.IndexOfAny('e', 'E');
        if (exponent < 0) return IsDecimal(text);

        var power = text[(exponent + 1)..];
        if (power is ['+' or '-', ..]) power = power[1..];
        return IsDecimal(text[..exponent]) && power.Length is > 0 and <= 3 && AreDigits(power);
    }

    private static bool IsDecimal(ReadOnlySpan<char> text)
    {
        var point = text.IndexOf('.');
        if (point < 0) return text.Length > 0 && AreDigits(text);

        var whole = text[..point];
        var fraction = text[(point + 1)..];
        return whole.Length + fraction.Length > 0 && AreDigits(whole) && AreDigits(fraction);
    }

    private static bool AreDigits(ReadOnlySpan<char> text) => !text.ContainsAnyExceptInRange('0', '9');
}
