using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;

namespace EolSequencer.Station.Explaining;

/// <summary>What a step does, as a sentence without its full stop.</summary>
internal static class ActionWords
{
    /// <summary>What the person is told; null when a device or nobody acts.</summary>
    public static LocalText? Prompt(StepAction action) => action switch
    {
        StepAction.Ask ask => ask.Text,
        StepAction.Judge judge => judge.Text,
        StepAction.Enter enter => enter.Text,
        StepAction.Scan scan => scan.Text,
        StepAction.Choose choose => choose.Text,
        _ => null,
    };

    public static string Of(PlannedStep planned, ExpectationWords values) => planned.Step.Action switch
    {
        StepAction.Ask { Until: null } => "the person confirms it",
        StepAction.Ask => "the vehicle or an instrument sees it done",
        StepAction.Judge => $"the person says in order or not in order{Where(planned.Step)}",
        StepAction.Enter enter => $"the person types the value{In(enter.Shape)}",
        StepAction.Scan => "the person scans the code",
        StepAction.Choose choose => $"the person picks one of {string.Join(", ", choose.Among)}",
        StepAction.Read read => $"reads {Channel(read.Channel, planned)}",
        StepAction.Sample sample => Sample(sample, planned, values),
        StepAction.Await => "waits for a condition",
        StepAction.Wait wait => $"waits {values.Plain(wait.Duration)}",
        StepAction.SetTo set => $"sets {Target(set.Role, set.Target.Name, set.Index, planned)} to {values.Of(set.To)}",
        StepAction.Do act => $"does {Target(act.Role, act.Target.Name, act.Index, planned)}{With(act, values)}",
        StepAction.Compute compute => $"computes {compute.Expression.Text}{(compute.Unit is { } unit ? $" in {unit.Symbol}" : "")}",
        var other => throw new InvalidOperationException($"{other.GetType().Name} has no words"),
    };

    private static string Where(Step step) =>
        step.Nonconformity is { Where.IsEmpty: false } hint ? $", and then where: {string.Join(", ", hint.Where)}" : "";

    private static string In(ValueShape shape) => shape.Unit is { } unit ? $" in {unit.Symbol}" : "";

    private static string Channel(ChannelUse use, PlannedStep planned) =>
        planned.Indexes.IsEmpty ? use.Resolve(planned.Arguments) : $"{use.Resolve(planned.Arguments)} of {string.Join(", ", planned.Indexes)}";

    private static string Sample(StepAction.Sample sample, PlannedStep planned, ExpectationWords values)
    {
        var span = sample.For is { } time ? $"for {values.Plain(time)}" : "until a condition is true";
        var kept = sample.Reduce switch
        {
            Reduction.Min => "the smallest value",
            Reduction.Max => "the largest value",
            Reduction.Mean => "the mean",
            Reduction.Median => "the median",
            Reduction.First => "the first value",
            Reduction.Last => "the last value",
            Reduction.Range => "largest minus smallest",
            _ => "the number of readings",
        };
        return $"reads {sample.Channel.Resolve(planned.Arguments)} every {values.Plain(sample.Every)} {span} and takes {kept}{(sample.MayMiss > 0 ? $"; {sample.MayMiss} may be missing" : "")}";
    }

    private static string Target(string role, string action, IndexUse? index, PlannedStep planned) =>
        ChannelUse.NameOf(role, action, index?.Resolve(planned.Arguments));

    private static string With(StepAction.Do act, ExpectationWords values) =>
        act.With.IsEmpty ? "" : $" with {string.Join(", ", act.With.Select(one => $"{one.Name} {values.Of(one.Value)}"))}";
}
