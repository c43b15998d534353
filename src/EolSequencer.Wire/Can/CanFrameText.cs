using System.Globalization;

namespace EolSequencer.Wire.Can;

/// <summary>The one-line text of a frame, for logs, messages and tests.</summary>
internal static class CanFrameText
{
    private const int BaseDigits = 3;
    private const int ExtendedDigits = 8;

    public static string Format(CanFrame frame)
    {
        var mark = (frame.IsFd, frame.HasBitRateSwitch) switch
        {
            (false, _) => "#",
            (true, false) => "##0",
            (true, true) => "##1",
        };
        return $"{frame.Id}{mark}{Convert.ToHexString(frame.Data.Span)}";
    }

    public static CanFrame Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            return ParseParts(text, text.IndexOf('#'));
        }
        catch (ArgumentException outOfRange)
        {
            throw new FormatException($"'{text}' is no frame: {outOfRange.Message}", outOfRange);
        }
    }

    private static CanFrame ParseParts(string text, int hash)
    {
        var id = ParseId(text, hash);
        var rest = text.AsSpan(hash + 1);
        if (!rest.StartsWith("#"))
        {
            return CanFrame.Classical(id, Convert.FromHexString(rest));
        }

        return rest.Length > 1 && rest[1] is '0' or '1'
            ? CanFrame.Fd(id, Convert.FromHexString(rest[2..]), bitRateSwitch: rest[1] == '1')
            : throw new FormatException($"'{text}' is no frame: 0 or 1 is due after '##'");
    }

    private static CanId ParseId(string text, int digits)
    {
        if (digits is not (BaseDigits or ExtendedDigits) ||
            !uint.TryParse(text.AsSpan(0, digits), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
        {
            throw new FormatException($"'{text}' is no frame: three or eight hexadecimal digits are due before '#'");
        }

        return digits == BaseDigits ? CanId.Base(value) : CanId.Extended(value);
    }
}
