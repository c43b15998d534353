namespace EolSequencer.Language.Expressions.Support;

/// <summary>Says what a feature of a trace is. It stands where a summary would: the editor shows it.</summary>
/// <param name="text">Half a sentence, without a full stop.</param>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Property)]
public sealed class MeansAttribute(string text) : Attribute
{
    public string Text => text;
}
