namespace EolSequencer.Language.Expectations;

/// <summary>A value inside an expectation, as far as its text alone says what it is.</summary>
internal abstract record OperandSyntax(ScalarPart Part)
{
    /// <summary>A written number; its unit stands beside it or at the other end of the window.</summary>
    public sealed record Number(decimal Value, ScalarPart Part) : OperandSyntax(Part);

    /// <summary>C# in brackets.</summary>
    /// <param name="Part">The text inside the brackets.</param>
    public sealed record Code(ScalarPart Part) : OperandSyntax(Part);

    /// <summary>A written value whose kind is that of what is judged.</summary>
    /// <param name="Text">The text, without quotes around it.</param>
    /// <param name="Part">Where it stands, quotes included.</param>
    public sealed record Written(string Text, ScalarPart Part) : OperandSyntax(Part);
}
