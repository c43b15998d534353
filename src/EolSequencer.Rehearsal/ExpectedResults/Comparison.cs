using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>Compares a run with what a test expects of it.</summary>
internal sealed class Comparison(ExpectedRun test, RunFold run)
{
    /// <summary>How many of the steps that a test does not name are told one by one.</summary>
    private const int MostOthers = 8;

    private readonly StepOutcomes _outcomes = new(run, test.Only.IsEmpty);

    /// <summary>What came out otherwise, in the order of the test.</summary>
    public ImmutableArray<Miss> Misses() =>
    [
        .. WholeRun(),
        .. test.Steps.SelectMany(new StepComparison(_outcomes).Misses),
        .. test.Steps.Where(step => step.Index is not null).SelectMany(step => step.Ids).Distinct().SelectMany(OtherIndexes),
        .. OtherSteps(),
    ];

    private IEnumerable<Miss> WholeRun()
    {
        var found = run.Ended?.RollUp.Verdict;
        if (found != test.Verdict.Value) yield return new Miss(test.Verdict.Place, "verdict", test.Verdict.Value.Word(), found?.Word() ?? "a run that has not ended");
    }

    /// <summary>Of a channel that is read as a whole, the values that the test does not name.</summary>
    private IEnumerable<Miss> OtherIndexes(string id)
    {
        var named = test.Steps.Where(step => step.Ids.Contains(id)).Select(step => step.Index).ToHashSet();
        if (test.Others.Value == Model.ExpectedResults.OtherSteps.Any || named.Contains(null)) return [];
        if (_outcomes.Find(id) is not { } judged) return [];
        return judged.Criteria
            .Where(criterion => criterion.Verdict > Verdict.Pass && !named.Contains(criterion.Of))
            .Select(criterion => new Miss(test.Others.Place, $"{id}[{criterion.Of}]", "pass", criterion.Verdict.Word(), StepComparison.Of(judged, criterion.Of)));
    }

    private IEnumerable<Miss> OtherSteps()
    {
        var named = test.Steps.SelectMany(step => step.Ids).ToHashSet(StringComparer.Ordinal);
        var odd = _outcomes.Planned.Where(id => !named.Contains(id)).Select(id => (Id: id, State: _outcomes.StateOf(id))).Where(step => !IsRight(step.State)).ToList();
        foreach (var (id, state) in odd.Take(MostOthers)) yield return new Miss(test.Others.Place, id, "pass", state.Word(), _outcomes.Find(id));
        if (odd.Count <= MostOthers) yield break;
        var states = string.Join(", ", odd.Skip(MostOthers).Select(step => step.State).Distinct().Order().Select(state => state.Word()));
        yield return new Miss(test.Others.Place, FormattableString.Invariant($"{odd.Count - MostOthers} further steps"), "pass", states);
    }

    private bool IsRight(StepState state) => test.Others.Value switch
    {
        Model.ExpectedResults.OtherSteps.Pass => state is StepState.None or StepState.Pass,
        Model.ExpectedResults.OtherSteps.PassOrNotReached => state is StepState.None or StepState.Pass or StepState.NotReached,
        _ => true,
    };
}
