using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>The window that the written values of a parameter must lie in.</summary>
internal sealed class ParameterWindow(Window window)
{
    /// <summary>The window; null: already reported.</summary>
    public static ParameterWindow? Read(YamlNode node, ValueShape shape, Report report)
    {
        if (ExpectationParser.Parse(node, report) is not { } syntax) return null;
        if (shape.Kind is not (ValueKind.Number or ValueKind.Time) || syntax is not ExpectationSyntax.Window written
            || Number(written.Low) is null && Number(written.High) is null || written.Low is OperandSyntax.Code || written.High is OperandSyntax.Code)
        {
            report.Add(SequenceCodes.ParameterWindow, node.Place, $"{Shown.Quoted(syntax.Part.Text)} is no window of written numbers for a {shape}");
            return null;
        }

        if (!Fits(written.Unit, shape.Unit))
        {
            report.Add(UnitCodes.WrongDimension, node.Place, $"the window is in {written.Unit?.Symbol ?? "no unit"}, the parameter is a {shape}");
            return null;
        }

        return new ParameterWindow(new Window(Number(written.Low), Number(written.High), written.Unit));
    }

    /// <summary>Reports a value outside the window.</summary>
    public void Check(Value value, YamlNode node, string what, Report report)
    {
        if (value is not NumberValue number || !number.TryIn(window.Unit, out var converted) || window.Contains(converted)) return;
        report.Add(SequenceCodes.OutsideWindow, node.Place, $"{what} is {number}, its window is {window}");
    }

    private static decimal? Number(OperandSyntax? operand) => operand is OperandSyntax.Number number ? number.Value : null;

    private static bool Fits(Unit? unit, Unit? wanted) => unit is null ? wanted is null : unit.Dimension == wanted?.Dimension;
}
