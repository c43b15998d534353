using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;

/// <summary>What holds of verdicts: the worse one wins, and nothing is left out of the sum.</summary>
internal static class OfVerdicts
{
    public static Invariant[] All { get; } =
    [
        Invariant.OfEach("a step is as bad as its worst criterion", WorstCriterion),
        Invariant.OfEach("a run comes to the sum of its steps", SumOfSteps),
        Invariant.OfEach("a run is as bad as its worst step", WorstStep),
        Invariant.OfEach("a run without a whole record is an error", NoRecordIsAnError),
        Invariant.OfEach("every planned step is accounted for", AccountedFor),
    ];

    private static IEnumerable<string> WorstCriterion(TestedVehicle vehicle)
    {
        foreach (var judged in EventsOf(vehicle).OfType<Judged>().Where(judged => !judged.Criteria.IsEmpty))
        {
            var worst = judged.Criteria.Where(criterion => !criterion.RecordOnly).Select(criterion => criterion.Verdict).DefaultIfEmpty().Max();
            if (judged.Measured < worst) yield return $"{judged.Step} is {judged.Measured.Word()}, a criterion of it {worst.Word()}";
        }
    }

    private static IEnumerable<string> SumOfSteps(TestedVehicle vehicle)
    {
        if (EndOf(vehicle) is not { } end) yield break;
        var sum = SumOf(vehicle.Plan, EventsOf(vehicle), end);
        if (end.RollUp != sum) yield return $"it came to {end.RollUp}, its steps to {sum}";
    }

    /// <summary>What the steps of a run come to.</summary>
    public static RollUp SumOf(Plan plan, IEnumerable<RunEvent> events, RunEnded end)
    {
        var counted = CountedOf(plan, events, end).ToList();
        int Of(Verdict verdict) => counted.Count(one => one == verdict);
        var sum = new RollUp(Of(Verdict.None), Of(Verdict.Pass), Of(Verdict.Inconclusive), Of(Verdict.Fail), Of(Verdict.Error));
        return end.Interrupted && sum.Releases ? sum.Plus(Verdict.Inconclusive) : sum; // The stop itself.
    }

    private static IEnumerable<string> WorstStep(TestedVehicle vehicle)
    {
        if (EndOf(vehicle) is not { } end) yield break;
        var worst = CountedOf(vehicle.Plan, EventsOf(vehicle), end).Append(end.Interrupted ? Verdict.Inconclusive : Verdict.None).Max();
        if (end.RollUp.Verdict != worst) yield return $"it is {end.RollUp.Verdict.Word()}, a step of it {worst.Word()}";
        if (end.RollUp.Releases && (end.Interrupted || EventsOf(vehicle).Any(one => one is Stopped))) yield return "it releases the vehicle although it was stopped";
        if (end.RollUp != vehicle.Result.RollUp && vehicle.Result.Fault is null) yield return $"its end says {end.RollUp}, the engine {vehicle.Result.RollUp}";
    }

    private static IEnumerable<string> NoRecordIsAnError(TestedVehicle vehicle)
    {
        if (vehicle.Result.Fault is null == (vehicle.Reported < vehicle.Told.Length)) yield return $"{vehicle.Told.Length - vehicle.Reported} events could not be kept; the engine says of that: {vehicle.Result.Fault ?? "nothing"}";
        if (vehicle.Result.Fault is not null && vehicle.Result.RollUp.Verdict != Verdict.Error) yield return $"it is {vehicle.Result.RollUp.Verdict.Word()}";
    }

    private static IEnumerable<string> AccountedFor(TestedVehicle vehicle)
    {
        if (EndOf(vehicle) is not { } end) yield break;
        var judged = EventsOf(vehicle).OfType<Judged>().Select(one => one.Step).ToHashSet();
        var notNeeded = EventsOf(vehicle).OfType<NotNeeded>().Select(one => one.Step).ToHashSet();
        var notReached = end.NotReached.ToHashSet();
        foreach (var step in vehicle.Plan.Counting.Select(step => step.Id))
        {
            if (!judged.Contains(step) && !notNeeded.Contains(step) && !notReached.Contains(step)) yield return $"{step} was neither judged nor left out with a reason";
        }

        foreach (var step in judged.Concat(notNeeded).Concat(notReached).Except(SystemPlant.StepsOf(vehicle.Plan))) yield return $"{step} was not planned";
    }

    /// <summary>What each step that enters the sum counts for, worked out from the events alone.</summary>
    private static IEnumerable<Verdict> CountedOf(Plan plan, IEnumerable<RunEvent> events, RunEnded end)
    {
        var newest = new Dictionary<string, Verdict?>();
        foreach (var one in events)
        {
            if (one is Judged judged) newest[judged.Step] = judged.Counted;
            if (one is NotNeeded notNeeded) newest[notNeeded.Step] = null;
        }

        foreach (var step in end.NotReached) newest[step] = Verdict.Inconclusive;
        return plan.Counting.Select(step => newest.GetValueOrDefault(step.Id)).OfType<Verdict>();
    }

    private static IEnumerable<RunEvent> EventsOf(TestedVehicle vehicle) => vehicle.Told.Select(one => one.Event);

    private static RunEnded? EndOf(TestedVehicle vehicle) => EventsOf(vehicle).OfType<RunEnded>().LastOrDefault();
}
