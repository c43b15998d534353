using System.Collections.Immutable;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Rehearsal.ExpectedResults;

namespace EolSequencer.Cli.Output;

/// <summary>A file of expected results, and what came of each of its tests.</summary>
internal sealed record TestedFile(ExpectedFile File, ImmutableArray<ExpectedOutcome> Outcomes)
{
    /// <summary>What came out otherwise, in a line, with what the step found where that is known.</summary>
    public static string LineOf(Miss miss) => miss.Judged is { } judged && Words.Finding(judged) is { Length: > 0 } finding ? $"{miss} ({finding})" : miss.ToString();
}
