using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Cli.Probing;

/// <summary>Reads a value that somebody typed for an action.</summary>
internal static class ActionValue
{
    /// <exception cref="ProbeTrouble">The text is no value of that shape.</exception>
    public static Value Parse(string text, ValueShape shape)
    {
        Value? value = shape.Kind switch
        {
            ValueKind.Truth => text switch { "yes" => TruthValue.Yes, "no" => TruthValue.No, _ => null },
            ValueKind.Number or ValueKind.Time => Number(text, shape.Unit),
            ValueKind.Text => Text(text.Trim('"'), shape),
            _ => null,
        };
        return value ?? throw new ProbeTrouble($"'{text}' does not fit; wanted is {Wanted(shape)}");
    }

    private static string Wanted(ValueShape shape) => shape.Unit is { } unit ? $"a number with its unit, such as  2 {unit.Symbol}" : shape.ToString();

    private static NumberValue? Number(string text, Unit? unit)
    {
        var parts = text.Split(' ', 2, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (parts.Length == 0 || !NumberText.TryParse(parts[0], out var number)) return null;
        if (unit is null) return parts.Length == 1 ? new NumberValue(number, null) : null;
        if (parts.Length == 1 || UnitTable.Exact(parts[1]) is not { } typed || typed.Dimension != unit.Dimension) return null;
        return typed.TryConvert(number, unit, out var converted) ? new NumberValue(converted, unit) : null;
    }

    private static TextValue? Text(string text, ValueShape shape) =>
        (shape.Choices.IsEmpty || shape.Choices.Contains(text)) && (shape.MaxLength is not { } most || text.Length <= most) ? new TextValue(text) : null;
}
