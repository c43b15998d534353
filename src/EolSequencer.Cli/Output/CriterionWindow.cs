using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;

namespace EolSequencer.Cli.Output;

/// <summary>The numbers of a criterion that was judged by a window, as the record holds them.</summary>
/// <param name="Value">In the window's unit.</param>
/// <param name="Uncertainty">Expanded uncertainty in the window's unit; null when none was stated.</param>
internal sealed record CriterionWindow(decimal Value, Window Window, decimal? Uncertainty)
{
    /// <summary>Null when the criterion has no number or no window.</summary>
    public static CriterionWindow? Of(CriterionResult criterion)
    {
        var (low, high) = (Number(criterion.Low), Number(criterion.High));
        if ((low is null && high is null) || Number(criterion.Value) is not { } value) return null;
        var unit = criterion.Unit is null ? null : UnitTable.Required(criterion.Unit);
        return new CriterionWindow(value, new Window(low, high, unit), Number(criterion.Uncertainty));
    }

    private static decimal? Number(string? text) =>
        decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out var number) ? number : null;
}
