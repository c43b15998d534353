namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The forms in which a number may be put into a text: digits wanted, with or without a point.</summary>
internal static class NumberFormat
{
    private const int MostLetters = 40;

    /// <summary>True for <c>0</c>, <c>00</c>, <c>0.00</c>, <c>0.0##</c>; anything else could be long or depend on a culture.</summary>
    public static bool IsAllowed(string format)
    {
        var point = format.IndexOf('.');
        var (whole, fraction) = point < 0 ? (format, "") : (format[..point], format[(point + 1)..]);
        return format.Length <= MostLetters
            && whole.Length > 0 && whole.Trim('0').Length == 0
            && (point < 0 || fraction.Length > 0)
            && fraction.TrimStart('0').TrimEnd('#').Length == 0;
    }
}
