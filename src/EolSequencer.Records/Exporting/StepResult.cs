using EolSequencer.Model.Events;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Exporting;

/// <summary>A step result as it is exported.</summary>
/// <param name="IsLast">True: no later result of the same step stands in the run, so this is the one that counts.</param>
internal readonly record struct StepResult(RunSummary Run, Judged Judged, bool IsLast)
{
    /// <summary>The results of a run in the order they were found.</summary>
    public static IEnumerable<StepResult> Of(RunSummary run, IReadOnlyList<Judged> judged)
    {
        var last = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var one in judged) last[one.Step] = one.N;
        return judged.Select(one => new StepResult(run, one, last[one.Step] == one.N));
    }
}
