using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Reads every number with a point or an exponent as a decimal: 1.5 is one and a half exactly.</summary>
internal static class NumberLiteral
{
    /// <summary>Writes a literal so that the compiler takes a decimal; whole numbers stay as they are.</summary>
    public static void Rewrite(LiteralExpressionSyntax literal, Draft draft)
    {
        var token = literal.Token;
        if (token.Value is decimal) return;
        if (token.Value is int or uint or long or ulong)
        {
            if (token.Text.TrimEnd('l', 'L', 'u', 'U') is { } plain && plain.Length != token.Text.Length)
            {
                draft.Fault(ExpressionCodes.NumberForm, token.Span, $"'{token.Text}' ends in a letter", $"write {plain}");
            }

            return;
        }

        var digits = token.Text.Replace("_", "", StringComparison.Ordinal);
        if (char.IsAsciiLetter(digits[^1]))
        {
            draft.Fault(ExpressionCodes.NumberForm, token.Span, $"'{token.Text}' is binary floating point", $"write {token.Text[..^1]}");
        }
        else if (decimal.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
        {
            draft.Edits.Replace(token.SpanStart, token.Span.End, number.ToString(CultureInfo.InvariantCulture) + "m");
        }
        else
        {
            draft.Fault(ExpressionCodes.NumberForm, token.Span, $"'{token.Text}' is larger than any number here, 7.9e28");
        }
    }
}
