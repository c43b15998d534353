using System.Globalization;
using EolSequencer.Engine.Judging;
using EolSequencer.Model.Events;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>Compares one step with what is expected of it.</summary>
internal sealed class StepComparison(StepOutcomes outcomes)
{
    private const string TimeCriterion = "takes";

    /// <summary>What came out otherwise; of a step in a loop, for each loop value that the vehicle has.</summary>
    public IEnumerable<Miss> Misses(ExpectedStep expected)
    {
        if (expected.Ids is [var only]) return Misses(expected, only);
        var present = expected.State?.Value == StepState.NotApplicable
            ? expected.Ids
            : expected.Ids.Where(id => outcomes.StateOf(id) != StepState.NotApplicable);
        var all = present.ToList();
        return all.Count == 0 && !expected.Ids.IsEmpty
            ? [new Miss(expected.Place, expected.Path, "one at least that applies to this vehicle", "none")]
            : all.SelectMany(id => Misses(expected, id));
    }

    private IEnumerable<Miss> Misses(ExpectedStep expected, string id)
    {
        var name = NameOf(id, expected.Index);
        var (state, judged) = (outcomes.StateOf(id), outcomes.Find(id));
        if (judged is not null && expected.Index is { } index)
        {
            if (Of(judged, index) is { } one) (state, judged) = (StepStates.Of(one.Measured), one);
            else if (judged.Cause is null) (state, judged) = (StepState.NotApplicable, null);
        }

        if (expected.State is { } wanted && wanted.Value != state) yield return new Miss(wanted.Place, name, wanted.Value.Word(), state.Word(), judged);
        if (judged is null)
        {
            if (expected.State is null) yield return new Miss(expected.Place, name, "that it runs", state.Word());
            yield break;
        }

        if (expected.Value is { } value)
        {
            foreach (var miss in Values(judged, value, expected.Index)) yield return miss;
        }

        if (expected.Took is { } took && Time(judged.Took, took, $"time of {id}") is { } late) yield return late;
        if (expected.Started is { } started && Time(judged.Start, started, $"start of {id}") is { } shifted) yield return shifted;
        if (expected.Attempts is { } attempts && attempts.Value != judged.Attempt) yield return new Miss(attempts.Place, $"attempts of {id}", Text(attempts.Value), Text(judged.Attempt));
        if (expected.Cause is { } cause && cause.Value != judged.Cause) yield return new Miss(cause.Place, $"cause of {id}", cause.Value.Word(), judged.Cause?.Word() ?? "none");
    }

    /// <summary>A step as if it had found one value of its channel only; null when it has none of this index.</summary>
    public static Judged? Of(Judged judged, string index) =>
        judged.Criteria.FirstOrDefault(criterion => criterion.Of == index) is { } own ? judged with { Criteria = [own], Measured = own.Verdict } : null;

    /// <summary>Whether it is about a value, not about the time taken or about where a part with that serial is: that stands beside the step's own value.</summary>
    private static bool IsValue(Judged judged, CriterionResult criterion) =>
        criterion.Of != TimeCriterion && (criterion.Of != SerialCheck.Criterion || judged.Criteria[0].Of.Length > 0);

    private static IEnumerable<Miss> Values(Judged judged, ExpectedValue expected, string? index)
    {
        var found = judged.Criteria.Where(criterion => IsValue(judged, criterion) && (index ?? criterion.Of) == criterion.Of).ToList();
        if (found.Count == 0) yield return new Miss(expected.Place, $"value of {NameOf(judged.Step, index)}", "one", "none", judged);
        foreach (var criterion in found)
        {
            var name = $"value of {NameOf(judged.Step, criterion.Of.Length == 0 ? null : criterion.Of)}";
            if (RecordedValue.Of(criterion, expected.Kind) is not { } value) yield return new Miss(expected.Place, name, "one", "none", judged);
            else if (Judge(value, expected.Is, expected.Place, name) is { } miss) yield return miss;
        }
    }

    private static Miss? Time(long microseconds, Stated<Expectation> expected, string name) =>
        Judge(new NumberValue(microseconds / 1_000_000m, UnitTable.Second), expected.Value, expected.Place, name);

    private static Miss? Judge(Value value, Expectation expect, Model.Source.SourcePlace place, string name)
    {
        var result = WrittenExpectation.Judge(value, expect);
        if (result.Verdict == Verdict.Pass) return null;
        return new Miss(place, name, result.Expected!, result.Unit is null ? result.Value! : $"{result.Value} {result.Unit}");
    }

    private static string NameOf(string id, string? index) => index is null ? id : $"{id}[{index}]";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
