using System.Text;
using EolSequencer.Model.Units;
using Microsoft.CodeAnalysis.CSharp;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Names and pieces of generated code that several writers have to agree on.</summary>
internal static class CodeText
{
    /// <summary>The scope that a function is given.</summary>
    public const string Scope = "s";

    /// <summary>Whether a number came through binary floating point.</summary>
    public const string Inexact = "inexact";

    /// <summary>The field of the unit's class that holds a unit of measurement.</summary>
    public static string Field(Unit unit) => $"u_{unit.ExpressionName}";

    /// <summary>The field that holds the units in which a quantity is handed over.</summary>
    public static string Field(IEnumerable<Unit> units) => $"out_{string.Join("__", units.Select(unit => unit.ExpressionName))}";

    /// <summary>The struct for quantities of a dimension.</summary>
    public static string Type(Dimension dimension) => dimension.ToString();

    /// <summary>One line, ended the same on every system: the text of a unit is hashed.</summary>
    public static void Line(this StringBuilder text, string line) => text.Append(line).Append('\n');

    /// <summary>A text as a C# literal.</summary>
    public static string Literal(string text) => SymbolDisplay.FormatLiteral(text, quote: true);
}
