using EolSequencer.Model.Events;
using EolSequencer.Model.ExpectedResults;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>What a run made of each step, by its full id.</summary>
/// <param name="isWhole">False when only some steps were asked for.</param>
internal sealed class StepOutcomes(RunFold run, bool isWhole)
{
    private readonly Dictionary<string, Judged> _judged = run.Results.ToDictionary(result => result.Step, StringComparer.Ordinal);
    private readonly HashSet<string> _notApplicable = [.. run.Begun?.NotApplicable ?? []];
    private readonly HashSet<string> _notReached = [.. run.Ended?.NotReached ?? []];

    /// <summary>The last attempt; null when the step did not run.</summary>
    public Judged? Find(string id) => _judged.GetValueOrDefault(id);

    public StepState StateOf(string id)
    {
        if (Find(id) is { } judged) return StepStates.Of(judged.Counted);
        if (run.NotNeeded.Contains(id)) return StepState.NotNeeded;
        if (_notReached.Contains(id)) return StepState.NotReached;

        // A loop value that the vehicle lacks stands nowhere.
        return isWhole || _notApplicable.Contains(id) ? StepState.NotApplicable : StepState.LeftOut;
    }

    /// <summary>Every step that ran or was to run.</summary>
    public IEnumerable<string> Planned => _judged.Keys.Concat(_notReached);
}
