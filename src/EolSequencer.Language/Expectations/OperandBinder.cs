using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Turns the values inside an expectation into operands of the kind that is judged. Null: already reported.</summary>
internal sealed class OperandBinder(JudgedValue judged, IExpectationNames names, Report report)
{
    /// <summary>An end of a window whose unit has been checked; null for an open one as well.</summary>
    public Operand? End(OperandSyntax? end, Unit? unit) => end switch
    {
        OperandSyntax.Number number => new Operand.Constant(new NumberValue(number.Value, unit)),
        OperandSyntax.Code code => Computed(code),
        _ => null,
    };

    /// <summary>A value behind <c>equals</c> or in a list.</summary>
    public Operand? Value(OperandSyntax operand) => operand switch
    {
        OperandSyntax.Code code => Computed(code),
        OperandSyntax.Written written when judged.Shape.Kind == ValueKind.Text => Text(written),
        OperandSyntax.Written written => Number(written.Part),
        _ => throw new InvalidOperationException("a value behind 'equals' is written or C#"),
    };

    private Operand.Constant? Number(ScalarPart part) =>
        QuantityParser.Parse(part, report) is { Operand: OperandSyntax.Number number, Unit: var unit } && UnitCheck.Fits(unit, part, judged, report)
            ? new Operand.Constant(new NumberValue(number.Value, unit))
            : null;

    private Operand.Constant? Text(OperandSyntax.Written written)
    {
        var (choices, longest) = (judged.Shape.Choices, judged.Shape.MaxLength);
        if (!choices.IsEmpty && !choices.Contains(written.Text))
        {
            report.Add(
                ExpectationCodes.Impossible, written.Part.Place, $"{judged.Name} is never {Shown.Quoted(written.Text)}",
                Nearest.Of(written.Text, choices) is { } near ? $"did you mean '{near}'?" : $"write {Shown.OneOf(choices)}");
            return null;
        }

        if (written.Text.Length > longest)
        {
            report.Add(
                ExpectationCodes.Impossible, written.Part.Place,
                $"{Shown.Quoted(written.Text)} has {written.Text.Length} characters, {judged.Name} at most {longest}");
            return null;
        }

        return new Operand.Constant(new TextValue(written.Text));
    }

    private Operand.Computed? Computed(OperandSyntax.Code code) =>
        names.Code(code.Part, judged.Shape) is { } expression ? new Operand.Computed(expression) : null;
}
