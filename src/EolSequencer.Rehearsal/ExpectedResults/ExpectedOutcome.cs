using System.Collections.Immutable;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>What came of a test.</summary>
/// <param name="Test">The test.</param>
/// <param name="Run">Id of its run in the record; null when none began.</param>
/// <param name="Verdict">The roll-up's verdict; null when the run did not end.</param>
/// <param name="Took">Virtual time.</param>
/// <param name="Misses">What came out otherwise than expected, in the order of the test.</param>
/// <param name="Trouble">Why it could not be run or recorded, which says nothing about what is expected; null when it could.</param>
public sealed record ExpectedOutcome(ExpectedRun Test, string? Run, Verdict? Verdict, TimeSpan Took, ImmutableArray<Miss> Misses, string? Trouble)
{
    /// <summary>True when everything came out as expected.</summary>
    public bool HasPassed => Misses.IsEmpty && Trouble is null;

    /// <summary>The outcome of a test that could not be run.</summary>
    public static ExpectedOutcome NotRun(ExpectedRun test, string why) => new(test, null, null, TimeSpan.Zero, [], why);
}
