using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads the forms that give a window: <c>a .. b UNIT</c>, <c>x ± y UNIT</c>, <c>at least x</c>, <c>at most x</c>.</summary>
internal static class WindowParser
{
    /// <summary>True when a text has a mark that only windows have.</summary>
    public static bool HasMark(ReadOnlySpan<char> text) =>
        WindowText.Find(text, "..") >= 0 || WindowText.Find(text, "±") >= 0 || WindowText.Find(text, "+/-") >= 0;

    /// <summary>A window by its marks; null: already reported.</summary>
    public static ExpectationSyntax? Parse(ScalarPart part, Report report)
    {
        if (WindowText.Find(part.Span, "..") is var dots and >= 0) return ParseEnds(part, dots, report);

        var sign = WindowText.Find(part.Span, "±");
        return sign >= 0
            ? ParseTolerance(part, part.Before(sign), part.From(sign + 1), report)
            : ParseTolerance(part, part.Before(WindowText.Find(part.Span, "+/-")), part.From(WindowText.Find(part.Span, "+/-") + 3), report);
    }

    /// <summary><c>at least x</c> and <c>at most x</c>; null: already reported.</summary>
    public static ExpectationSyntax? ParseOneEnd(ScalarPart part, ScalarPart end, bool isLow, Report report)
    {
        if (QuantityParser.Parse(end, report) is not { } quantity) return null;
        return new ExpectationSyntax.Window(part, isLow ? quantity.Operand : null, isLow ? null : quantity.Operand, quantity.Unit);
    }

    private static ExpectationSyntax.Window? ParseEnds(ScalarPart part, int dots, Report report)
    {
        if (part.Span[dots..].StartsWith("..."))
        {
            var count = part.Span[dots..].IndexOfAnyExcept('.') is var more and >= 0 ? more : part.Length - dots;
            report.Add(ExpectationCodes.LookAlike, part.From(dots, count).Place, $"{count} dots stand between the ends", $"write  {part.With(dots, count, "..")}");
            return null;
        }

        if (WindowText.Find(part.Span, "..", dots + 2) is var again and >= 0)
        {
            report.Add(ExpectationCodes.BehindEnd, part.From(again, 2).Place, "these are the second two dots of a window", "write one start and one end");
            return null;
        }

        var (left, right) = (part.Before(dots).Trim(), part.From(dots + 2).Trim());
        if (!TryParseEnd(left, isHigh: false, report, out var low)) return null;
        if (!TryParseEnd(right, isHigh: true, report, out var high)) return null;
        if (low?.Operand is null && high?.Operand is null)
        {
            report.Add(ExpectationCodes.NoEnds, part.Place, $"{Shown.Quoted(part.Text)} accepts everything");
            return null;
        }

        return TryShareUnit(part, low, high, report, out var unit) ? Ordered(part, low, high, unit, report) : null;
    }

    /// <summary>An end, open or not. The unit of both ends may stand alone behind the dots: <c>9.6 .. V</c>.</summary>
    private static bool TryParseEnd(ScalarPart part, bool isHigh, Report report, out WindowEnd? end)
    {
        end = null;
        if (part.IsEmpty) return true;

        if (isHigh && UnitTable.Exact(part.Text) is { } alone)
        {
            end = new WindowEnd(null, alone, part);
            return true;
        }

        if (QuantityParser.Parse(part, report) is not { } quantity) return false;
        end = new WindowEnd(quantity.Operand, quantity.Unit, quantity.UnitPart);
        return true;
    }

    private static bool TryShareUnit(ScalarPart part, WindowEnd? low, WindowEnd? high, Report report, out Unit? unit)
    {
        unit = high?.Unit ?? low?.Unit;
        if (low?.Unit is { } first && high?.Unit is { } second && first != second)
        {
            report.Add(UnitCodes.Mixed, high.UnitPart.Place, $"this end is in {second}, the other in {first}");
            return false;
        }

        if (low?.Unit is not null && high is { Unit: null, Operand: OperandSyntax.Number })
        {
            report.Add(UnitCodes.Missing, high.Operand.Part.Place, $"this end has no unit, the other is in {low.Unit}", $"write  {part.Text} {low.Unit}");
            return false;
        }

        return true;
    }

    private static ExpectationSyntax.Window? Ordered(ScalarPart part, WindowEnd? low, WindowEnd? high, Unit? unit, Report report)
    {
        if (low?.Operand is OperandSyntax.Number start && high?.Operand is OperandSyntax.Number end && end.Value < start.Value)
        {
            report.Add(
                ExpectationCodes.Inverted, part.Place,
                $"the window ends at {new NumberValue(end.Value, unit)}, below its start at {new NumberValue(start.Value, unit)}");
            return null;
        }

        return new ExpectationSyntax.Window(part, low?.Operand, high?.Operand, unit);
    }

    private static ExpectationSyntax.Window? ParseTolerance(ScalarPart part, ScalarPart left, ScalarPart right, Report report)
    {
        if (QuantityParser.Parse(left.Trim(), report) is not { } middle || QuantityParser.Parse(right.Trim(), report) is not { } tolerance) return null;
        if (middle.Operand is not OperandSyntax.Number x || tolerance.Operand is not OperandSyntax.Number y)
        {
            report.Add(ExpectationCodes.Tolerance, part.Place, $"{Shown.Quoted(part.Text)} has a C# value beside its tolerance", "write both ends:  (low) .. (high)");
            return null;
        }

        if (y.Value < 0)
        {
            report.Add(ExpectationCodes.Tolerance, y.Part.Place, $"the tolerance {NumberText.Of(y.Value)} is negative");
            return null;
        }

        if (!TryShareUnit(part, WindowEnd.Of(middle), WindowEnd.Of(tolerance), report, out var unit)) return null;
        return new ExpectationSyntax.Window(part, x with { Value = x.Value - y.Value }, x with { Value = x.Value + y.Value }, unit);
    }

    private sealed record WindowEnd(OperandSyntax? Operand, Unit? Unit, ScalarPart UnitPart)
    {
        public static WindowEnd Of(QuantitySyntax quantity) => new(quantity.Operand, quantity.Unit, quantity.UnitPart);
    }
}
