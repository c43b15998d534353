namespace EolSequencer.Model.Vehicles;

/// <summary>A vehicle identification number: 17 capital letters and digits without I, O and Q (ISO 3779).</summary>
public sealed record Vin
{
    public const int Length = 17;

    private const int CheckPosition = 9;

    private Vin(string text) => Text = text;

    public string Text { get; }

    /// <summary>Reads a number and never corrects it: case, blanks and look-alikes are refused.</summary>
    /// <param name="text">What was scanned, typed or read.</param>
    /// <param name="rule">What position 9 means in this market.</param>
    public static VinResult TryParse(string text, CheckDigitRule rule)
    {
        if (text.Length != Length)
        {
            return VinResult.Refused($"a vehicle identification number has {Length} characters, this has {text.Length}");
        }

        for (var at = 0; at < Length; at++)
        {
            if (VinCheckDigit.ValueOf(text[at]) is null)
            {
                return VinResult.Refused($"position {at + 1}: {VinCharacter.Describe(text, at)} not allowed");
            }
        }

        if (rule == CheckDigitRule.Off || DoubtAbout(text) is not { } doubt)
        {
            return VinResult.Accepted(new Vin(text));
        }

        return rule == CheckDigitRule.Require ? VinResult.Refused(doubt) : VinResult.Accepted(new Vin(text), doubt);
    }

    /// <summary>The check digit of 49 CFR 565.15, from all positions but the ninth.</summary>
    /// <param name="text">17 characters that a vehicle identification number may have.</param>
    /// <returns>A digit or <c>X</c>.</returns>
    public static char ComputeCheckDigit(string text) => VinCheckDigit.Of(text);

    public override string ToString() => Text;

    /// <summary>What the check digit says against a number; null when nothing.</summary>
    private static string? DoubtAbout(string text)
    {
        // Numbers such as 11111111111111111 satisfy the arithmetic and are nobody's.
        if (text.AsSpan().Count(text[0]) == Length) return $"all characters are {text[0]}";

        var expected = VinCheckDigit.Of(text);
        return text[CheckPosition - 1] == expected
            ? null
            : $"position {CheckPosition}: check digit {expected} expected, found {text[CheckPosition - 1]}";
    }
}
