using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Writes how a value of the scope becomes a C# value, together with the unit an author takes its number in.</summary>
internal sealed class ScopeRead(Draft draft)
{
    /// <summary>
    /// Writes the reading of <paramref name="value"/>, which is code for a value of the model, and takes the unit from the
    /// path when one follows.
    /// </summary>
    /// <param name="what">What the path names, for messages.</param>
    /// <returns>The code and the shape it has; null when a fault has been reported.</returns>
    public (string Code, ValueShape Shape)? Convert(PathSyntax path, string value, ValueShape shape, string what)
    {
        var (noting, inexact) = draft.NotesInexact ? ("Noting", $", ref {CodeText.Inexact}") : ("", "");
        switch (shape.Kind)
        {
            case ValueKind.Truth: return ($"Truth({value})", shape);
            case ValueKind.Text: return ($"Text({value})", shape);
            case ValueKind.List: return ($"List({value})", shape);
            case ValueKind.Number when shape.Unit is null:
                return IsFollowedByUnit(path) ? RefuseUnit(path, what) : ($"Count{noting}({value}{inexact})", ValueShape.Count);
        }

        var unit = shape.Unit ?? UnitTable.Second;
        if (path.NextName is not { } name || name.ValueText == "or")
        {
            draft.UseQuantity(unit);
            return ($"Quantity{noting}<{CodeText.Type(unit.Dimension)}>({value}{inexact})", ValueShape.Number(unit));
        }

        var units = UnitTable.Of(unit.Dimension);
        if (units.FirstOrDefault(one => one.ExpressionName == name.ValueText) is not { } taken)
        {
            draft.Fault(ExpressionCodes.UnknownUnit, name.Span, UnitWords.Unknown(name.ValueText, unit.Dimension, what), UnitWords.Advice(name.ValueText, unit.Dimension));
            return null;
        }

        path.Take();
        draft.TakenUnits.Add(taken);
        return ($"In{noting}({value}, {CodeText.Field(taken)}{inexact})", ValueShape.Count);
    }

    private static bool IsFollowedByUnit(PathSyntax path) => path.NextName is { ValueText: not "or" };

    private (string, ValueShape)? RefuseUnit(PathSyntax path, string what)
    {
        draft.Fault(ExpressionCodes.UnknownUnit, path.NextName!.Value.Span, $"{what} is a plain number and has no unit", "leave the point and the name out");
        return null;
    }
}
