using System.Collections;
using System.Globalization;
using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Scratch;

/// <summary>How the value of a line reads: quantities with their unit, lists in brackets, always in one culture.</summary>
internal static class ScratchText
{
    private const int MostItems = 100;
    private const int MostLetters = 4_000;

    public static string Of(object? value)
    {
        var text = value switch
        {
            null => "",
            string letters => letters,
            bool truth => TruthValue.Of(truth).ToString(),
            IQuantity quantity => new NumberValue(quantity.Number, quantity.Unit).ToString(),
            IEnumerable items => List(items),
            _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
        };
        return text.Length <= MostLetters ? text : $"{text[..MostLetters]} … ({text.Length} letters)";
    }

    private static string List(IEnumerable items)
    {
        var shown = items.Cast<object?>().Take(MostItems + 1).Select(Of).ToList();
        return shown.Count > MostItems ? $"[{string.Join(", ", shown.Take(MostItems))}, …]" : $"[{string.Join(", ", shown)}]";
    }
}
