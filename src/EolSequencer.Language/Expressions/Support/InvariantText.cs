using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>
/// Puts a text together from parts, <c>$"VOLT {u}"</c>, the same in every culture. Only what an expression can hold may
/// stand in it.
/// </summary>
[InterpolatedStringHandler]
public readonly ref struct InvariantText
{
    private readonly StringBuilder _text;

    public InvariantText(int literalLength, int formattedCount) => _text = new StringBuilder(literalLength + 8 * formattedCount);

    /// <summary>The text put together.</summary>
    public static string Of(InvariantText parts) => ScopeValues.Bounded(parts._text.ToString());

    public void AppendLiteral(string part) => _text.Append(part);

    public void AppendFormatted(string part) => _text.Append(part);

    public void AppendFormatted(bool part) => _text.Append(TruthValue.Of(part));

    public void AppendFormatted(decimal part) => _text.Append(NumberText.Of(part));

    public void AppendFormatted(decimal part, string format) => _text.Append(part.ToString(format, CultureInfo.InvariantCulture));

    public void AppendFormatted<T>(T part) where T : struct, IQuantity<T> => _text.Append(new NumberValue(part.Number, part.Unit));
}
