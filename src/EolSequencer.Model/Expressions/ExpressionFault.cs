namespace EolSequencer.Model.Expressions;

/// <summary>
/// An expression that has no value: overflow, division by zero, not finite, a value that is missing. It ends the step
/// as <c>error</c> with this message; it is never a verdict on the vehicle.
/// </summary>
public sealed class ExpressionFault(string message, Exception? cause = null) : Exception(message, cause);
