using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expectations;

/// <summary>A number or C# in brackets, with the unit that stands behind it.</summary>
/// <param name="Operand">A written number, or C#.</param>
/// <param name="Unit">Null when none stands there.</param>
/// <param name="UnitPart">Where the unit stands; empty when none does.</param>
internal sealed record QuantitySyntax(OperandSyntax Operand, Unit? Unit, ScalarPart UnitPart);
