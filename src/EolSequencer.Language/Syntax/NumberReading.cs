using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Syntax;

/// <summary>Whole numbers, decimal or hexadecimal, and truth values.</summary>
internal static class NumberReading
{
    private const char Minus = '\u2212';

    /// <summary>A whole number: <c>12</c>, <c>-40</c>, <c>0x7E0</c>.</summary>
    /// <param name="least">Smallest value allowed.</param>
    /// <param name="most">Largest value allowed.</param>
    public static long? AsWhole(this YamlNode node, string what, long least, long most, Report report)
    {
        if (node.AsBareWord(what, "a whole number", report) is not { } scalar) return null;
        if (Parse(scalar, what, report) is not { } number) return null;
        if (number >= least && number <= most) return number;
        report.Add(SyntaxCodes.OutOfRange, scalar.Place, $"{what} is {scalar.Text}, possible is {Written(least)} to {Written(most)}");
        return null;
    }

    /// <summary><c>yes</c>, <c>no</c>, <c>true</c> or <c>false</c>, in small letters and without quotes.</summary>
    public static bool? AsYesNo(this YamlNode node, string what, Report report)
    {
        if (node.AsBareWord(what, "yes or no", report) is not { } scalar) return null;
        switch (scalar.Text)
        {
            case "yes" or "true":
                return true;
            case "no" or "false":
                return false;
            default:
                report.Add(SyntaxCodes.NotYesNo, scalar.Place, $"{what} is to be yes or no, here is {Shown.Quoted(scalar.Text)}", MeantTruth(scalar.Text));
                return null;
        }
    }

    /// <summary>The seconds an author may mean by <c>1:30</c> or <c>1:30:00</c>; <c>null</c> for any other text.</summary>
    internal static decimal? BaseSixty(string text)
    {
        var parts = text.Split(':');
        if (parts.Length is not (2 or 3) || !parts.All(part => part.Length is > 0 and < 6 && part.All(char.IsAsciiDigit))) return null;
        return parts.Aggregate(0m, (sum, part) => sum * 60 + int.Parse(part, CultureInfo.InvariantCulture));
    }

    private static long? Parse(YamlScalar scalar, string what, Report report)
    {
        var text = scalar.Text;
        if (text.StartsWith("0x", StringComparison.Ordinal)
            && long.TryParse(text.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var hex)
            && hex >= 0)
        {
            return hex;
        }

        var digits = text.AsSpan(text is ['-' or Minus, ..] ? 1 : 0);
        if (digits.Length > 0 && !digits.ContainsAnyExceptInRange('0', '9'))
        {
            if (digits is ['0', _, ..])
            {
                report.Add(SyntaxCodes.LeadingZero, scalar.Place, $"{what} is {Shown.Quoted(text)}, which some read as octal", WithoutZeros(digits));
                return null;
            }

            if (long.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return digits.Length < text.Length ? -number : number;
            report.Add(SyntaxCodes.OutOfRange, scalar.Place, $"{what} is {Shown.Quoted(text)}, which is too large for a whole number");
            return null;
        }

        if (BaseSixty(text) is { } seconds)
        {
            report.Add(
                SyntaxCodes.BaseSixty,
                scalar.Place,
                $"{what} is to be a whole number, here is {Shown.Quoted(text)}",
                $"write one number; a time is written with its unit where one is expected, for example  {seconds.ToString(CultureInfo.InvariantCulture)} s");
            return null;
        }

        report.Add(SyntaxCodes.NotWhole, scalar.Place, $"{what} is to be a whole number, here is {Shown.Quoted(text)}");
        return null;
    }

    private static string WithoutZeros(ReadOnlySpan<char> digits)
    {
        var trimmed = digits.TrimStart('0');
        var bare = trimmed.IsEmpty ? "0" : trimmed.ToString();
        return long.TryParse(bare, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? $"write  {bare}  or  0x{number.ToString("X2", CultureInfo.InvariantCulture)}"
            : $"write  {bare}";
    }

    private static string? MeantTruth(string text) => text.ToUpperInvariant() switch
    {
        "ON" or "YES" or "Y" or "TRUE" or "1" => "write  yes",
        "OFF" or "NO" or "N" or "FALSE" or "0" => "write  no",
        _ => null,
    };

    private static YamlScalar? AsBareWord(this YamlNode node, string what, string wanted, Report report)
    {
        if (node is not YamlScalar scalar)
        {
            NodeReading.ReportKind(node, what, wanted, report);
            return null;
        }

        if (scalar.IsPlain) return scalar;
        report.Add(SyntaxCodes.QuotesNotWanted, scalar.Place, $"{what} is to be {wanted}, the quotes make a text of it");
        return null;
    }

    private static string Written(long number) => number.ToString(CultureInfo.InvariantCulture);
}
