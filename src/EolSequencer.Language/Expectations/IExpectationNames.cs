using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>What names mean where an expectation stands. Null always means: already reported.</summary>
internal interface IExpectationNames
{
    /// <summary>The C# value in brackets.</summary>
    /// <param name="part">The C#, without the brackets.</param>
    /// <param name="wanted">What its value must be: the shape that is judged, a number of its dimension.</param>
    Expression? Code(ScalarPart part, ValueShape wanted);

    /// <summary>The limit of the vehicle type, bound to what it judges here.</summary>
    Expectation? Limit(ExpectationSyntax.Limit limit, JudgedValue judged);
}
