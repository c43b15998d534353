using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>What to say about units by name.</summary>
internal static class UnitWords
{
    /// <summary>A name that is no unit of a dimension.</summary>
    public static string Unknown(string name, Dimension dimension, string what)
    {
        var known = UnitTable.All.FirstOrDefault(unit => unit.ExpressionName == name);
        return known is null
            ? $"'{name}' is no unit of {what}, a {dimension.Word()}"
            : $"{known.Symbol} is a unit of {known.Dimension.Word()}, {what} is a {dimension.Word()}";
    }

    /// <summary>The nearest unit, or all of the dimension.</summary>
    public static string Advice(string name, Dimension dimension)
    {
        var names = UnitTable.Of(dimension).Select(unit => unit.ExpressionName).ToList();
        return Nearest.Of(name, names) is { } near ? $"did you mean '{near}'?" : $"its units are {Names(dimension)}";
    }

    /// <summary>How a number is taken: <c>.km_h, .m_s or .mph</c>.</summary>
    public static string Names(Dimension dimension)
    {
        var names = UnitTable.Of(dimension).Select(unit => $".{unit.ExpressionName}").ToList();
        return names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}";
    }
}
