using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>In an expected result names mean nothing: what is expected is written down.</summary>
internal sealed class WrittenNames(Report report) : IExpectationNames
{
    public Expression? Code(ScalarPart part, ValueShape wanted)
    {
        report.Add(ExpectedCodes.NotWritten, part.Place, $"{Shown.Quoted(part.Text)} is C#");
        return null;
    }

    public Expectation? Limit(ExpectationSyntax.Limit limit, JudgedValue judged)
    {
        report.Add(ExpectedCodes.NotWritten, limit.Part.Place, $"{Shown.Quoted(limit.Part.Text)} is a limit, by which the step judges itself");
        return null;
    }
}
