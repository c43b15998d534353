using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads <c>uncertainty</c> and checks that it leaves something to pass.</summary>
internal static class UncertaintyBinder
{
    /// <summary>The expanded uncertainty in the unit of what is judged; null: already reported.</summary>
    /// <remarks>It is a width: 0.5 K of a temperature in °F is 0.9 °F. A temperature takes °C, K, °F and K diff alike.</remarks>
    public static Operand.Constant? Bind(YamlNode node, JudgedValue judged, Report report)
    {
        if (QuantityParser.ParseWritten(node, report) is not { } written) return null;

        var part = ScalarPart.Whole((YamlScalar)node);
        var unit = judged.Shape.Unit?.Dimension == Dimension.Temperature && written.Unit?.Dimension == Dimension.TemperatureDifference
            ? UnitTable.Required("K")
            : written.Unit;
        if (!UnitCheck.Fits(unit, part, judged, report)) return null;

        if (written.Number < 0)
        {
            report.Add(ExpectationCodes.Tolerance, part.Place, $"the uncertainty {written} is negative");
            return null;
        }

        var width = unit is null ? written.Number : unit.ConvertWidth(written.Number, judged.Shape.Unit!);
        return new Operand.Constant(new NumberValue(width, judged.Shape.Unit));
    }

    /// <summary>Reports each written window in which no value can pass a guarded decision.</summary>
    /// <param name="node">Where the uncertainty stands.</param>
    public static void CheckGuard(YamlNode node, Operand.Constant uncertainty, Expectation expect, Report report)
    {
        switch (expect)
        {
            case Expectation.Within { Low: Operand.Constant { Value: NumberValue low }, High: Operand.Constant { Value: NumberValue high } } within:
                CheckGuard(node, (NumberValue)uncertainty.Value, new Window(low.Number, high.Number, within.Unit), report);
                break;
            case Expectation.ByVehicle rows:
                foreach (var row in rows.Rows) CheckGuard(node, uncertainty, row.Is, report);
                break;
            case Expectation.ByIndex indexes:
                foreach (var window in indexes.Windows.Values) CheckGuard(node, uncertainty, window, report);
                break;
        }
    }

    private static void CheckGuard(YamlNode node, NumberValue uncertainty, Window window, Report report)
    {
        var width = uncertainty.Unit is { } unit ? unit.ConvertWidth(uncertainty.Number, window.Unit!) : uncertainty.Number;
        if (GuardedDecision.CanPass(window, width)) return;
        report.Add(ExpectationCodes.TooUncertain, node.Place, $"twice the uncertainty of {uncertainty} is wider than the window {window.Describe()}");
    }
}
