using EolSequencer.Model.Values;

namespace EolSequencer.Model.Judging;

/// <summary>A value and its window as people see them: never so short that they seem to contradict the verdict.</summary>
/// <param name="Value">The value with its unit, such as <c>5.04 V</c>.</param>
/// <param name="Window">The window with its unit, such as <c>at most 5.0 V</c>.</param>
public sealed record ShownValue(string Value, string Window)
{
    /// <summary>Rounds a value to the digits its window is written with, and adds digits until it lies where it really lies.</summary>
    /// <param name="number">The value in the window's unit.</param>
    /// <param name="window">The window it was judged by.</param>
    /// <param name="uncertainty">The guard band of a guarded decision in the window's unit; 0 for a simple one.</param>
    public static ShownValue Of(decimal number, Window window, decimal uncertainty = 0)
    {
        decimal?[] marks =
        [
            window.Low, window.Low - uncertainty, window.Low + uncertainty,
            window.High, window.High - uncertainty, window.High + uncertainty,
        ];
        var decimals = marks.Max(mark => mark?.Scale ?? 0);
        var shown = number;
        while (decimals < number.Scale)
        {
            shown = decimal.Round(number, decimals, MidpointRounding.AwayFromZero);
            if (marks.All(mark => mark is null || number.CompareTo(mark.Value) == shown.CompareTo(mark.Value))) break;
            decimals++;
            shown = number;
        }

        var unit = window.Unit is null ? "" : $" {window.Unit.Symbol}";
        return new ShownValue(NumberText.Of(shown) + unit, window.Describe());
    }
}
