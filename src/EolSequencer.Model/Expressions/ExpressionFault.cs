namespace EolSequencer.Model.Expressions;

/// <summary>
/// An expression that has no value: overflow, division by zero, not finite, a value that is missing. It ends the step
/// as <c>error</c> with this message; it is never a verdict on the vehicle.
/// </summary>
public sealed class ExpressionFault(string message, Exception? cause = null) : Exception(message, cause)
{
    /// <summary>What .NET throws over the values at hand, in our words.</summary>
    internal static ExpressionFault Of(Exception fault) => new(
        fault switch
        {
            DivideByZeroException => "division by zero: the result is not finite",
            ArithmeticException => "arithmetic overflow: the result is larger than 7.9e28 or than its type holds",
            _ => "a position lies outside the text",
        },
        fault);
}
