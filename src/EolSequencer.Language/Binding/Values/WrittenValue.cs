using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Values;

/// <summary>Reads a value that is written down and whose type is known. Null always means: already reported.</summary>
internal static class WrittenValue
{
    /// <summary>The value; numbers are in the unit of the type.</summary>
    public static Value? Read(YamlNode node, string what, ValueShape shape, Report report) => shape.Kind switch
    {
        ValueKind.Truth => node.AsYesNo(what, report) is { } truth ? TruthValue.Of(truth) : null,
        ValueKind.Number => Number(node, what, shape.Unit, report),
        ValueKind.Time => Number(node, what, UnitTable.Second, report) is { } time ? Time(node, what, time, report) : null,
        ValueKind.Text => Text(node, what, shape, report),
        _ => List(node, what, report),
    };

    private static NumberValue? Number(YamlNode node, string what, Unit? unit, Report report)
    {
        if (node.AsText(what, report) is not { } text || QuantityParser.ParseWritten(text, report) is not { } written) return null;
        if (written.Unit is null && unit is not null)
        {
            report.Add(UnitCodes.Missing, text.Place, $"{what} is {written}, a {unit.Dimension.Word()} is wanted", $"write  {written} {unit}");
            return null;
        }

        if (written.Unit is not null && unit is null)
        {
            report.Add(UnitCodes.Superfluous, text.Place, $"{what} is {written}, a plain number is wanted");
            return null;
        }

        if (written.Unit is { } own && unit is not null && own.Dimension != unit.Dimension)
        {
            report.Add(UnitCodes.WrongDimension, text.Place, $"{what} is {written}, a {own.Dimension.Word()}; a {unit.Dimension.Word()} is wanted");
            return null;
        }

        if (written.TryIn(unit, out var number)) return new NumberValue(number, unit);
        report.Add(SyntaxCodes.OutOfRange, text.Place, $"{what} is {written}, too large in {unit}");
        return null;
    }

    private static NumberValue? Time(YamlNode node, string what, NumberValue time, Report report)
    {
        if (time.Number is >= 0 and <= 1_000_000) return time;
        report.Add(SyntaxCodes.OutOfRange, node.Place, $"{what} is {time}, possible is 0 s to 1000000 s");
        return null;
    }

    private static TextValue? Text(YamlNode node, string what, ValueShape shape, Report report)
    {
        if (!shape.Choices.IsEmpty) return node.AsOneOf(what, shape.Choices, report) is { } choice ? new TextValue(choice) : null;
        if (node.AsText(what, report) is not { } text) return null;
        if (shape.MaxLength is not { } most || text.Text.Length <= most) return new TextValue(text.Text);
        report.Add(SyntaxCodes.OutOfRange, text.Place, $"{what} has {text.Text.Length} characters, possible are {most}");
        return null;
    }

    private static ListValue? List(YamlNode node, string what, Report report) => node.AsList(what, report) is { } items
        ? new ListValue([.. items.Select(item => item.AsText($"an entry of {what}", report)?.Text).OfType<string>()])
        : null;
}
