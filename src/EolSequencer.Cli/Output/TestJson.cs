using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.ExpectedResults;

namespace EolSequencer.Cli.Output;

/// <summary>Tests for programs.</summary>
internal static class TestJson
{
    public static object Of(IReadOnlyList<TestedFile> files) => new
    {
        asExpected = files.Sum(file => file.Outcomes.Count(outcome => outcome.HasPassed)),
        otherwise = files.Sum(file => file.Outcomes.Count(outcome => !outcome.HasPassed)),
        files = files.Select(file => new { file = file.File.Path, id = file.File.Id, tests = file.Outcomes.Select(Test) }),
    };

    private static object Test(ExpectedOutcome outcome) => new
    {
        test = outcome.Test.Name,
        line = outcome.Test.Place.Line,
        column = outcome.Test.Place.Column,
        asExpected = outcome.HasPassed,
        sequence = outcome.Test.Sequence.Id,
        order = outcome.Test.Order.Id,
        seed = outcome.Test.Seed,
        faults = outcome.Test.Faults.Select(fault => fault.Value),
        run = outcome.Run,
        verdict = outcome.Verdict?.Word(),
        seconds = outcome.Took.TotalSeconds,
        trouble = outcome.Trouble,
        misses = outcome.Misses.Select(Miss),
    };

    private static object Miss(Miss miss) => new
    {
        file = miss.Place.File,
        line = miss.Place.Line,
        column = miss.Place.Column,
        of = miss.Of,
        expected = miss.Expected,
        found = miss.Found,
        finding = miss.Judged is { } judged && Words.Finding(judged) is { Length: > 0 } finding ? finding : null,
    };
}
