using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>The value that an event holds as text.</summary>
internal static class RecordedValue
{
    /// <summary>The value of a criterion; null when it is missing.</summary>
    /// <param name="kind">The kind of value that the step finds.</param>
    public static Value? Of(CriterionResult criterion, ValueKind kind) => (criterion.Value, kind) switch
    {
        (null, _) => null,
        ({ } text, ValueKind.Number or ValueKind.Time) => new NumberValue(decimal.Parse(text, CultureInfo.InvariantCulture), criterion.Unit is null ? null : UnitTable.Required(criterion.Unit)),
        ({ } text, ValueKind.Truth) => TruthValue.Of(text == "yes"),
        ("[]", ValueKind.List) => new ListValue([]),
        ({ } text, ValueKind.List) => new ListValue([.. text[1..^1].Split(", ")]),
        ({ } text, _) => new TextValue(text),
    };
}
