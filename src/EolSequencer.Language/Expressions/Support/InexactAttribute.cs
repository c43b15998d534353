namespace EolSequencer.Language.Expressions.Support;

/// <summary>Marks a function that works in binary floating point: its value may not be judged with <c>equals</c>.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class InexactAttribute : Attribute;
