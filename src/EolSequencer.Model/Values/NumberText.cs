using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace EolSequencer.Model.Values;

/// <summary>Numbers as people write them in files and type them at the station, and as records hold them.</summary>
public static class NumberText
{
    /// <summary>Most digits a number may have; more would be rounded silently.</summary>
    public const int MaxDigits = 28;

    private const char Minus = '\u2212';

    /// <summary>The canonical text: a point, no thousands mark, no exponent, the hyphen as minus.</summary>
    public static string Of(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Reads a number: digits with at most one point between digits, a sign in front if need be.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out decimal number) => TryParse(text, out number, out _);

    /// <summary>Reads a number, and says why when it is none.</summary>
    /// <param name="text">Without blanks around it. U+2212 counts as minus.</param>
    /// <param name="number">The number exactly as written, trailing zeros kept.</param>
    /// <param name="fault">What is wrong with the text, as the second half of a message.</param>
    public static bool TryParse(ReadOnlySpan<char> text, out decimal number, [NotNullWhen(false)] out string? fault)
    {
        number = 0;
        var digits = text is ['-' or '+' or Minus, ..] ? text[1..] : text;
        fault = FaultOf(digits);
        if (fault is not null)
        {
            return false;
        }

        number = decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        if (text[0] is '-' or Minus) number = -number;
        return true;
    }

    private static string? FaultOf(ReadOnlySpan<char> digits)
    {
        if (digits.IsEmpty) return "there is no number here";

        var point = digits.IndexOf('.');
        var whole = point < 0 ? digits : digits[..point];
        var fraction = point < 0 ? [] : digits[(point + 1)..];

        if (digits.Contains(',')) return "a number has a point, no comma, and no thousands mark";
        if (digits.IndexOfAny(" '’_\u00A0\u202F") >= 0) return "a number has no thousands mark";
        if (HasExponent(digits)) return "write the number out, without an exponent";
        if (fraction.Contains('.')) return "a number has one point at most";
        if (!AreDigits(whole) || !AreDigits(fraction)) return "that is no number";
        if (whole.IsEmpty) return "write a zero in front of the point";
        if (point >= 0 && fraction.IsEmpty) return "write digits behind the point";
        if (whole is ['0', _, ..]) return "a number has no leading zeros; put a text such as a part number in quotes";
        return whole.Length + fraction.Length > MaxDigits ? $"a number has {MaxDigits} digits at most" : null;
    }

    private static bool HasExponent(ReadOnlySpan<char> digits) =>
        digits.IndexOfAny('e', 'E') is var at and > 0 && char.IsAsciiDigit(digits[at - 1]) && at + 1 < digits.Length
        && (char.IsAsciiDigit(digits[at + 1]) || digits[at + 1] is '+' or '-');

    private static bool AreDigits(ReadOnlySpan<char> text) => !text.ContainsAnyExceptInRange('0', '9');
}
