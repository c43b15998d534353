using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Syntax;

/// <summary>Durations such as <c>5 s</c>, <c>500 ms</c> or <c>1.5 min</c>.</summary>
internal static class DurationReading
{
    private const decimal TicksPerSecond = TimeSpan.TicksPerSecond;
    private const decimal MostSeconds = 100m * 365 * 24 * 3600;

    /// <summary>A duration, exact: what is finer than 100 ns is reported, not rounded.</summary>
    /// <param name="least">Shortest duration allowed.</param>
    /// <param name="most">Longest duration allowed.</param>
    public static TimeSpan? AsDuration(this YamlNode node, string what, TimeSpan least, TimeSpan most, Report report)
    {
        if (node.AsText(what, report) is not { } scalar) return null;
        if (Parse(scalar, what, report) is not { } duration) return null;
        if (duration >= least && duration <= most) return duration;
        report.Add(SyntaxCodes.OutOfRange, scalar.Place, $"{what} is {scalar.Text}, possible is {Written(least)} to {Written(most)}");
        return null;
    }

    private static TimeSpan? Parse(YamlScalar scalar, string what, Report report)
    {
        var text = scalar.Text;
        if (NumberReading.BaseSixty(text) is { } meant)
        {
            report.Add(SyntaxCodes.BaseSixty, scalar.Place, $"{what} is {Shown.Quoted(text)}", $"write  {meant.ToString(CultureInfo.InvariantCulture)} s");
            return null;
        }

        var numberEnd = text.AsSpan().LastIndexOfAnyInRange('0', '9') + 1;
        if (!NumberText.TryParse(text.AsSpan(0, numberEnd), out var number, out var fault))
        {
            report.Add(SyntaxCodes.NotDuration, scalar.Place, $"{what} is to be a duration, here is {Shown.Quoted(text)}: {fault}");
            return null;
        }

        if (UnitOf(scalar, numberEnd, what, report) is not { } unit) return null;
        if (decimal.Abs(number) > MostSeconds)
        {
            report.Add(SyntaxCodes.OutOfRange, scalar.Place, $"{what} is {Shown.Quoted(text)}, longer than a hundred years");
            return null;
        }

        var ticks = number * unit.Factor * TicksPerSecond;
        if (ticks == decimal.Truncate(ticks)) return new TimeSpan((long)ticks);
        report.Add(SyntaxCodes.OutOfRange, scalar.Place, $"{what} is {Shown.Quoted(text)}, finer than the clock's step of 100 ns", "round it");
        return null;
    }

    private static Unit? UnitOf(YamlScalar scalar, int numberEnd, string what, Report report)
    {
        var spelling = scalar.Text[numberEnd..].Trim();
        if (spelling.Length == 0)
        {
            report.Add(SyntaxCodes.NoUnitOfTime, scalar.Place, $"{what} is {Shown.Quoted(scalar.Text)}, without a unit", $"write  {scalar.Text} s  or  {scalar.Text} ms");
            return null;
        }

        var place = scalar.PlaceOf(scalar.Text.LastIndexOf(spelling, StringComparison.Ordinal), spelling.Length);
        switch (UnitTable.Find(spelling))
        {
            case UnitLookup.Found { Unit: { Dimension: Dimension.Time } unit }:
                return unit;
            case UnitLookup.Found other:
                report.Add(SyntaxCodes.NotDuration, place, $"{what} is to be a duration, {other.Unit.Symbol} is a unit of {other.Unit.Dimension.Word()}");
                return null;
            case UnitLookup.Unknown unknown:
                report.Add(SyntaxCodes.NotDuration, place, $"{Shown.Quoted(spelling)} is no unit of time", unknown.Hint);
                return null;
            default:
                throw new InvalidOperationException("the unit table gave an answer of a third kind");
        }
    }

    private static string Written(TimeSpan duration) =>
        (duration.Ticks / TicksPerSecond).ToString("0.#######", CultureInfo.InvariantCulture) + " s";
}
