using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>Judges outside of a run, as a run would.</summary>
public static class WrittenExpectation
{
    /// <summary>Judges a value by the simple decision.</summary>
    /// <param name="expect">Every end and every value of it is written down; anything else is a broken assumption and throws.</param>
    public static CriterionResult Judge(Value value, Expectation expect) => new ValueJudge(null, Decision.Simple, null, recordOnly: false).Judge("", value, expect);
}
