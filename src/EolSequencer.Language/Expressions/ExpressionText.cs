using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Expressions;

/// <summary>An expression as it was met in a file, to be compiled.</summary>
/// <param name="Node">The text it stands in.</param>
/// <param name="Offset">Where it begins in <see cref="YamlScalar.Text"/>.</param>
/// <param name="Expression">Completed by compiling.</param>
internal sealed record ExpressionText(YamlScalar Node, int Offset, ExpressionNames Names, Wanted Wanted, Expression Expression)
{
    public string Text => Expression.Text;

    /// <summary>The place of some of its characters.</summary>
    public SourcePlace PlaceOf(int start, int length) => Node.PlaceOf(Offset + start, length);
}
