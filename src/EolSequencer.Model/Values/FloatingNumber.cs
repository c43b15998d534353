using System.Globalization;

namespace EolSequencer.Model.Values;

/// <summary>Decimals from binary floating point, at the resolution that the binary number has.</summary>
public static class FloatingNumber
{
    /// <summary>Significant digits kept of a double; binary tails begin behind the fifteenth.</summary>
    public const int DoubleDigits = 12;

    private const double Bound = 7.9e28; // decimal.MaxValue is 79228162514264337593543950335

    /// <summary>Rounds a double to 12 significant digits: 434.99999999999994 is 435.</summary>
    /// <param name="number">Any double.</param>
    /// <param name="result">The decimal without trailing zeros; below 1e-28 it is 0.</param>
    /// <returns>False when the number is not finite or too large for a decimal: no reading, cause not-finite.</returns>
    public static bool TryFromDouble(double number, out decimal result) =>
        TryParse(number, number.ToString("E11", CultureInfo.InvariantCulture), out result);

    /// <summary>The shortest decimal that a 32-bit float stands for: 11.7f is 11.7, not 11.699999809.</summary>
    /// <param name="number">Any float.</param>
    /// <param name="result">The decimal without trailing zeros; below 1e-28 it is 0.</param>
    /// <returns>False when the number is not finite or too large for a decimal: no reading, cause not-finite.</returns>
    public static bool TryFromSingle(float number, out decimal result) =>
        TryParse(number, number.ToString("R", CultureInfo.InvariantCulture), out result);

    private static bool TryParse(double number, string text, out decimal result)
    {
        result = 0;
        if (!(Math.Abs(number) < Bound)) return false; // also refuses not-a-number

        // Dividing by one with 28 zeros drops trailing zeros and nothing else.
        result = decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture) / 1.0000000000000000000000000000m;
        return true;
    }
}
