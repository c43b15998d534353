using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>Turns what .NET throws during an evaluation into the one exception that an expression may throw.</summary>
public static class Faults
{
    /// <summary>True for faults of the values at hand; anything else is a broken assumption of ours and is left alone.</summary>
    public static bool Speaks(Exception fault) => fault is ArithmeticException or ArgumentOutOfRangeException;

    /// <summary>The fault in our words.</summary>
    public static ExpressionFault Of(Exception fault) => new(
        fault switch
        {
            DivideByZeroException => "division by zero: the result is not finite",
            ArithmeticException => "arithmetic overflow: the result is larger than 7.9e28 or than its type holds",
            _ => "a position lies outside the text",
        },
        fault);

    /// <summary>A step that is named without <c>.or(…)</c> has no value.</summary>
    public static ExpressionFault Missing(string path) => new($"{path} has no value");

    internal static ExpressionFault WrongKind(object value, string wanted) => new($"'{value}' came where {wanted} was due");
}
