using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Compares the unit an author wrote with the unit of what is judged.</summary>
internal static class UnitCheck
{
    /// <summary>From here on two units of one dimension are more likely a slip than meant: milli beside mega.</summary>
    private const decimal FarApart = 1_000_000_000;

    /// <summary>Whether a written unit, or none, fits what is judged; reported when not.</summary>
    /// <param name="written">The unit; null when none stands there.</param>
    /// <param name="part">The text it belongs to.</param>
    public static bool Fits(Unit? written, ScalarPart part, JudgedValue judged, Report report)
    {
        switch (written, judged.Shape.Unit)
        {
            case (null, { } wanted):
                report.Add(UnitCodes.Missing, part.Place, $"{Shown.Quoted(part.Text)} has no unit, {judged.Name} is in {wanted}", $"write  {part.Text} {wanted}");
                return false;
            case ({ } own, null):
                report.Add(UnitCodes.Superfluous, part.Place, $"{Shown.Quoted(part.Text)} has the unit {own}, {judged.Name} is a count");
                return false;
            case ({ } own, { } wanted) when own.Dimension != wanted.Dimension:
                report.Add(
                    UnitCodes.WrongDimension, part.Place, $"{own} is a unit of {own.Dimension.Word()}, {judged.Name} is in {wanted}",
                    $"write a unit of {wanted.Dimension.Word()}: {string.Join(", ", UnitTable.Of(wanted.Dimension))}");
                return false;
            case ({ } own, { } wanted) when own.Factor / wanted.Factor is >= FarApart or <= 1 / FarApart:
                var (larger, smaller) = own.Factor > wanted.Factor ? (own, wanted) : (wanted, own);
                report.Add(
                    UnitCodes.FarApart, part.Place,
                    $"{Shown.Quoted(part.Text)} is in {own}, {judged.Name} in {wanted}; one {larger} is {NumberText.Of(larger.Factor / smaller.Factor)} {smaller}");
                return true;
            default:
                return true;
        }
    }
}
