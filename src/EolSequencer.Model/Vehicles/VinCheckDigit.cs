namespace EolSequencer.Model.Vehicles;

/// <summary>The arithmetic of the check digit.</summary>
/// <remarks>Source: 49 CFR 565.15(c), tables III to VI: values of letters, weights of positions, remainder modulo 11.</remarks>
internal static class VinCheckDigit
{
    private static ReadOnlySpan<int> Weights => [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

    // A to Z; zero marks the letters that no number has. S is 2, not 1.
    private static ReadOnlySpan<int> LetterValues =>
    [
        1, 2, 3, 4, 5, 6, 7, 8, 0, 1, 2, 3, 4, 5, 0, 7, 0, 9, 2, 3, 4, 5, 6, 7, 8, 9,
    ];

    /// <summary>The value of a character; null when a vehicle identification number cannot have it.</summary>
    public static int? ValueOf(char character) => character switch
    {
        >= '0' and <= '9' => character - '0',
        'I' or 'O' or 'Q' => null,
        >= 'A' and <= 'Z' => LetterValues[character - 'A'],
        _ => null,
    };

    public static char Of(string text)
    {
        var sum = 0;
        for (var at = 0; at < Weights.Length; at++)
        {
            sum += Weights[at] * (ValueOf(text[at]) ?? throw new ArgumentException($"position {at + 1} holds no character of a vehicle identification number", nameof(text)));
        }

        return (sum % 11) is 10 ? 'X' : (char)('0' + sum % 11);
    }
}
