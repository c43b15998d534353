using System.Globalization;
using System.Text;

namespace EolSequencer.Model.Vehicles;

/// <summary>How a message names a character that looks like another one.</summary>
internal static class VinCharacter
{
    /// <summary>The character and its code point: <c>O (U+004F)</c>; a control character by its code point alone.</summary>
    public static string Describe(string text, int at)
    {
        if (!Rune.TryGetRuneAt(text, at, out var rune)) return $"half a character (U+{(int)text[at]:X4})";

        var code = $"U+{rune.Value.ToString("X4", CultureInfo.InvariantCulture)}";
        return Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) ? code : $"{rune} ({code})";
    }
}
