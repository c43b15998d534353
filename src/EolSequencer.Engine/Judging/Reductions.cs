using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>How the readings of a <c>sample</c> become one value.</summary>
internal static class Reductions
{
    /// <summary>The value; null when there is no reading to make it of.</summary>
    public static NumberValue? Of(IReadOnlyList<NumberValue> values, Reduction reduce)
    {
        if (reduce == Reduction.Count) return new NumberValue(values.Count, null);
        if (values.Count == 0) return null;
        var numbers = values.Select(value => value.Number).ToList();
        var number = reduce switch
        {
            Reduction.Min => numbers.Min(),
            Reduction.Max => numbers.Max(),
            Reduction.First => numbers[0],
            Reduction.Last => numbers[^1],
            Reduction.Range => numbers.Max() - numbers.Min(),
            Reduction.Median => Median(numbers),
            _ => ToTwelveDigits(numbers.Sum() / numbers.Count),
        };
        return values[0] with { Number = number, Inexact = values.Any(value => value.Inexact) || reduce == Reduction.Mean };
    }

    private static decimal Median(List<decimal> numbers)
    {
        numbers.Sort();
        var middle = numbers.Count / 2;
        return numbers.Count % 2 == 1 ? numbers[middle] : (numbers[middle - 1] + numbers[middle]) / 2;
    }

    private static decimal ToTwelveDigits(decimal number)
    {
        var whole = decimal.Truncate(Math.Abs(number));
        var digits = whole == 0 ? 0 : (int)Math.Floor(Math.Log10((double)whole)) + 1;
        return decimal.Round(number, Math.Clamp(12 - digits, 0, 28), MidpointRounding.ToEven);
    }
}
