using System.Globalization;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>What there is to know of a step or group beside what it does and what its value must be.</summary>
internal sealed class StepFacts(Order order, DeviceWords devices, string language)
{
    public IEnumerable<ExplainedFact> Of(PlannedStep planned, ExpectationWords values)
    {
        var step = planned.Step;
        foreach (var fact in Ending(planned, values)) yield return fact;
        foreach (var fact in Of(step, planned.Arguments)) yield return fact;
        if (step.Show is { } show) yield return new("shown meanwhile", Wording.Of(show, language, planned.WordFor));
        foreach (var channel in Channels(step).DistinctBy(use => use.Resolve(planned.Arguments))) yield return new("read from", devices.Channel(channel, planned.Arguments));
        if (Acting(step.Action) is { } act) yield return new("done by", devices.Action(act.Role, act.Target, act.Index?.Resolve(planned.Arguments)));
        foreach (var fact in Judging(step, values)) yield return fact;
        if (step.Serial is { } serial) yield return new("recorded as", $"the serial of part {PartName.OfStep(planned.Id, serial.Part)}, which may be on no other vehicle");
        foreach (var requirement in step.Requirements) yield return new("requirement", requirement);
        if (step.Nonconformity is { } miss) yield return new("if not in order", $"nonconformity {miss.Code}");
        if (step.Repair is { } repair) yield return new("repair", Wording.Of(repair, language, planned.WordFor));
    }

    /// <summary>What a step and a group have in common.</summary>
    public IEnumerable<ExplainedFact> Of(Node node, Arguments arguments)
    {
        if (node.When is { } when) yield return new("for vehicles with", ConditionWords.Of(when, order, arguments));
        if (node.OnlyIf is { } needed) yield return new("only if", ConditionWords.Of(needed, order, arguments));
        if (node.Require is { } must) yield return new("must hold all the time", $"{ConditionWords.Of(must.That, order, arguments)}{(must.ElseStop ? "; else the run stops" : "")}");
        if (node.Retry is { } retry) yield return new("attempts", Attempts(retry));
    }

    /// <summary>The channels that are kept as curves while a group runs.</summary>
    public static IEnumerable<ExplainedFact> Captured(PlannedNode node) =>
        node.Captures.IsEmpty ? [] : [new("kept as curves", string.Join(", ", node.Captures.Select(one => one.Every is { } every ? $"{one.Name} every {Seconds(every)}" : one.Name)))];

    private IEnumerable<ExplainedFact> Ending(PlannedStep planned, ExpectationWords values)
    {
        var step = planned.Step;
        if (Until(step.Action) is { } until) yield return new("ends when", ConditionWords.Of(until, order, planned.Arguments));
        if (step.Action is StepAction.Ask { Until: not null, Edge: true } or StepAction.Await { Edge: true }) yield return new("and", "it must have been otherwise before");
        if (step.Lasting is { } lasting) yield return new("and stays so for", values.Plain(lasting));
        if (step.Takes is { } takes) yield return new("time it takes", $"{values.Of(takes, [])}{(step.TakesIsRecordOnly ? ", only recorded" : "")}");
        if (step.Since is { } since) yield return new("counted from", ConditionWords.Of(since, order, planned.Arguments));
        if (step.Within is { } within) yield return new("time limit", values.Plain(within));
    }

    private static IEnumerable<ExplainedFact> Judging(Step step, ExpectationWords values)
    {
        if (step.RecordOnly || step.ExpectIsRecordOnly) yield return new("counts", "as none: what is found is only recorded");
        if (step.Uncertainty is { } uncertainty) yield return new("uncertainty", $"{values.Plain(uncertainty)} (k = 2), decided {(step.Decision == Decision.Guarded ? "guarded" : "by the window alone")}");
        if (step.MissingFails) yield return new("no answer", "speaks of the vehicle when the link answers somebody else");
        if (step.OnFail != OnFail.Continue) yield return new("after a miss", step.OnFail == OnFail.Stop ? "the run stops" : "a person decides: again, go on or stop");
        if (step.Class == StepClass.Safety) yield return new("class", "safety");
    }

    private static Expression? Until(StepAction action) => action switch
    {
        StepAction.Ask ask => ask.Until,
        StepAction.Sample sample => sample.Until,
        StepAction.Await wait => wait.Condition,
        _ => null,
    };

    private static (string Role, Model.Devices.ActionDescription Target, IndexUse? Index)? Acting(StepAction action) => action switch
    {
        StepAction.SetTo set => (set.Role, set.Target, set.Index),
        StepAction.Do act => (act.Role, act.Target, act.Index),
        _ => null,
    };

    private static IEnumerable<ChannelUse> Channels(Step step)
    {
        IEnumerable<ChannelUse> read = step.Action switch
        {
            StepAction.Read one => [one.Channel],
            StepAction.Sample one => [one.Channel],
            StepAction.Compute one => one.Expression.Channels,
            _ => [],
        };
        Expression?[] conditions = [Until(step.Action), step.Since, step.OnlyIf, step.Require?.That];
        return read.Concat(conditions.OfType<Expression>().SelectMany(one => one.Channels));
    }

    private static string Attempts(RetryRule retry)
    {
        var pause = retry.Pause > TimeSpan.Zero ? $", {Seconds(retry.Pause)} apart" : "";
        return $"up to {retry.Times} more after {string.Join(" or ", retry.On.Select(verdict => verdict.Word()))}{pause}";
    }

    private static string Seconds(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.###} s");
}
