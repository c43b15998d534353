using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Reads a number, or C# in brackets, and the unit behind it.</summary>
internal static class QuantityParser
{
    /// <summary>A written quantity that stands alone as a key's value, such as <c>0.01 A</c>; null: already reported.</summary>
    /// <param name="node">The value; C# in brackets is refused here.</param>
    public static NumberValue? ParseWritten(YamlNode node, Report report)
    {
        if (Parse(node, report) is not { } quantity) return null;
        if (quantity.Operand is OperandSyntax.Number number) return new NumberValue(number.Value, quantity.Unit);

        report.Add(NumberCodes.NotWritten, node.Place, $"{Shown.Quoted(ScalarPart.Whole((YamlScalar)node).Text)} is a C# value");
        return null;
    }

    /// <summary>A quantity that stands alone as a key's value; null: already reported.</summary>
    public static QuantitySyntax? Parse(YamlNode node, Report report)
    {
        if (node is YamlScalar scalar) return Parse(ScalarPart.Whole(scalar), report);

        report.Add(NumberCodes.Missing, node.Place, $"{node.Kind} stands where a number is wanted");
        return null;
    }

    /// <summary>A quantity that is all of a piece of text; null: already reported.</summary>
    public static QuantitySyntax? Parse(ScalarPart part, Report report)
    {
        if (part.Span is ['(', ..]) return ParseCode(part, report) is { } code ? new QuantitySyntax(code, null, part.From(part.Length)) : null;

        var length = NumberLength(part.Span);
        if (length == 0)
        {
            report.Add(NumberCodes.Missing, part.Place, $"{Shown.Quoted(part.Text)} is no number");
            return null;
        }

        var number = part.Before(length);
        var rest = part.From(length).Trim();
        if (!NumberText.TryParse(number.Span, out var value, out var fault) || IsSplitNumber(rest, ref fault, ref number, part))
        {
            report.Add(NumberCodes.Malformed, number.Place, $"{Shown.Quoted(number.Text)} cannot be read as a number", fault);
            return null;
        }

        if (!TryParseUnit(rest, report, out var unit)) return null;
        return new QuantitySyntax(new OperandSyntax.Number(value, number), unit, rest);
    }

    /// <summary>The unit that is all of a piece of text; no text is no unit.</summary>
    /// <returns>False: already reported.</returns>
    public static bool TryParseUnit(ScalarPart part, Report report, out Unit? unit)
    {
        unit = null;
        if (part.IsEmpty) return true;

        if (UnitTable.Find(part.Text) is UnitLookup.Unknown unknown)
        {
            report.Add(UnitCodes.Unknown, part.Place, $"{Shown.Quoted(part.Text)} is no unit", unknown.Hint);
            return false;
        }

        unit = UnitTable.Required(part.Text);
        return true;
    }

    /// <summary>C# in brackets that is all of a piece of text; null: already reported.</summary>
    public static OperandSyntax.Code? ParseCode(ScalarPart part, Report report)
    {
        var close = CodeBrackets.Close(part.Span, 0);
        if (close < 0)
        {
            report.Add(ExpectationCodes.OpenBracket, part.From(0, 1).Place, "this bracket is not closed");
            return null;
        }

        var rest = part.From(close + 1).Trim();
        if (rest.IsEmpty) return new OperandSyntax.Code(part.From(1, close - 1).Trim());

        if (UnitTable.Exact(rest.Text) is not null)
        {
            report.Add(UnitCodes.Superfluous, rest.Place, $"{Shown.Quoted(rest.Text)} stands behind a C# value, which brings its own unit", "leave it out");
        }
        else
        {
            report.Add(ExpectationCodes.BehindEnd, rest.Place, $"{Shown.Quoted(rest.Text)} stands behind a C# value");
        }

        return null;
    }

    /// <summary>How many characters belong to a number, right or wrong: with thousands marks, a comma, an exponent.</summary>
    private static int NumberLength(ReadOnlySpan<char> text)
    {
        var at = text is ['+' or '-' or '\u2212', ..] ? 1 : 0;
        var digits = text[at..].IndexOfAnyExcept("0123456789.,_'’");
        at = digits < 0 ? text.Length : at + digits;
        while (at > 0 && text[at - 1] is '\'' or '’') at--; // behind the last digit it is the sign of minutes of arc
        if (!text[..at].ContainsAnyInRange('0', '9')) return 0;
        if (at + 1 >= text.Length || text[at] is not ('e' or 'E')) return at;

        var power = text[at + 1] is '+' or '-' ? at + 2 : at + 1;
        if (power >= text.Length || !char.IsAsciiDigit(text[power])) return at;
        var end = text[power..].IndexOfAnyExceptInRange('0', '9');
        return end < 0 ? text.Length : power + end;
    }

    /// <summary>A blank inside a number, as in <c>1 200 N</c>, leaves digits at the front of the unit.</summary>
    private static bool IsSplitNumber(ScalarPart rest, ref string? fault, ref ScalarPart number, ScalarPart whole)
    {
        if (rest.IsEmpty || !char.IsAsciiDigit(rest.Span[0]) || rest.Span.StartsWith("1/")) return false;

        var more = rest.Span.IndexOfAnyExceptInRange('0', '9');
        number = whole.Before(rest.Start - whole.Start + (more < 0 ? rest.Length : more));
        fault = "a number has no thousands mark and no blank";
        return true;
    }
}
