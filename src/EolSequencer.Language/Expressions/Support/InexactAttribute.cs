namespace EolSequencer.Language.Expressions.Support;

/// <summary>Marks a function or feature that works in binary floating point: its value may not be judged with <c>equals</c>.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Property)]
public sealed class InexactAttribute : Attribute;
