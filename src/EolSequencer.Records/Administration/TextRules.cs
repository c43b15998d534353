using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Records.Administration;

/// <summary>What a text given by a person may be before it is kept for ever.</summary>
internal static partial class TextRules
{
    public const int LongestId = 40;

    public const int LongestName = 80;

    public const int LongestText = 1000;

    private const int LongestQuoted = 60;

    /// <summary>An id: letters, digits, and . _ - inside. Null when it is one.</summary>
    /// <param name="what">What it is the id of, for the message: <c>badge</c>.</param>
    public static Refused? Id(string what, string text) => IdForm().IsMatch(text)
        ? null
        : Refused.Malformed($"{Quote(text)} is no {what}: up to {LongestId} letters of A to Z, digits and . _ - are wanted, a letter or digit first");

    /// <summary>A short text on one line. Null when it is one.</summary>
    public static Refused? Name(string what, string text) => Line(what, text, LongestName);

    /// <summary>What a person has to say: a reason, what was done. Null when it is such a text.</summary>
    public static Refused? Text(string what, string text) => Line(what, text, LongestText);

    /// <summary>A vehicle identification number. Null when it is one; its check digit was judged when it was first read.</summary>
    public static Refused? Vin(string text) => Model.Vehicles.Vin.TryParse(text, CheckDigitRule.Off) is { Vin: null, Fault: var fault }
        ? Refused.Malformed($"{Quote(text)} is no vehicle identification number: {fault}")
        : null;

    /// <summary>A text as it may be shown and logged: on one line, shortened, what cannot be seen as its number.</summary>
    public static string Quote(string text)
    {
        var shown = new StringBuilder("'");
        foreach (var rune in text.EnumerateRunes().Take(LongestQuoted))
        {
            if (IsHidden(rune)) shown.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            else shown.Append(rune);
        }

        return shown.Append(text.Length > LongestQuoted ? "…'" : "'").ToString();
    }

    private static Refused? Line(string what, string text, int longest)
    {
        if (string.IsNullOrWhiteSpace(text)) return Refused.Malformed($"the {what} is empty; write one");
        if (text.Length > longest) return Refused.Malformed($"the {what} has {text.Length} characters, at most {longest} are kept");
        if (text.EnumerateRunes().Any(IsHidden)) return Refused.Malformed($"the {what} {Quote(text)} holds a character that cannot be seen; write it on one line without");
        return null;
    }

    /// <summary>Control and format characters, line ends, and halves of a pair (which the enumeration gives as U+FFFD).</summary>
    private static bool IsHidden(Rune rune) => rune == Rune.ReplacementChar || Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or
        UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate;

    [GeneratedRegex(@"\A[A-Za-z0-9][A-Za-z0-9._-]{0,39}\z", RegexOptions.CultureInvariant)]
    private static partial Regex IdForm();
}
