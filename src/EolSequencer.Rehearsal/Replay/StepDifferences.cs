using EolSequencer.Engine.Planning;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>Where a step of two revisions says something else, as far as a recorded attempt depends on it.</summary>
/// <param name="Deed">What it does differs, so that its attempts would have been others: which part, for people. Null: the same.</param>
/// <param name="Require">What must hold meanwhile differs.</param>
/// <param name="OnlyIf">Whether it is needed is decided otherwise.</param>
/// <param name="Since">Its time counts from another moment.</param>
/// <param name="Formula">It computes otherwise.</param>
/// <param name="Expect">It expects otherwise.</param>
/// <param name="Within">Its time limit is written otherwise.</param>
internal sealed record StepDifferences(string? Deed, bool Require, bool OnlyIf, bool Since, bool Formula, bool Expect, bool Within)
{
    public static StepDifferences None { get; } = new(null, false, false, false, false, false, false);

    /// <summary>Compares a step as planned by one revision with the same as planned by another.</summary>
    public static StepDifferences Between(PlacedStep old, CheckedSequence oldSequence, PlacedStep now, CheckedSequence newSequence)
    {
        bool Differ(Func<PlannedStep, object?> part) => Text(old.Planned, part(old.Planned)) != Text(now.Planned, part(now.Planned));
        return new StepDifferences(
            DeedOf(old.Planned, oldSequence, now.Planned, newSequence),
            Conditions(old, node => node.Require?.That) != Conditions(now, node => node.Require?.That),
            Conditions(old, node => node.OnlyIf) != Conditions(now, node => node.OnlyIf),
            Differ(step => step.Step.Since) || (old.Planned.Step.Since ?? now.Planned.Step.Since) is { } since && ChannelsOf(since, old.Planned, oldSequence) != ChannelsOf(since, now.Planned, newSequence),
            Differ(step => (step.Step.Action as StepAction.Compute)?.Expression),
            Differ(step => step.Expect) || Differ(step => step.Step.Takes) || Differ(step => step.Step.Uncertainty) || Differ(step => step.Step.Decision),
            Differ(step => step.Step.Within));
    }

    private static string? DeedOf(PlannedStep old, CheckedSequence oldSequence, PlannedStep now, CheckedSequence newSequence)
    {
        var (before, after) = (PartsOf(old.Step), PartsOf(now.Step));
        if (old.Step.Action.GetType() != now.Step.Action.GetType() || before.Count != after.Count) return "it does something else";
        for (var at = 0; at < before.Count; at++)
        {
            if (Text(old, before[at].Part) != Text(now, after[at].Part)) return $"its {before[at].Name} {(before[at].IsText ? "reads" : "is")} otherwise";
        }

        foreach (var expression in after.Select(part => part.Part).OfType<Expression>())
        {
            if (ChannelsOf(expression, old, oldSequence) != ChannelsOf(expression, now, newSequence)) return "a channel of its condition is described otherwise";
        }

        return null;
    }

    private static List<(string Name, object? Part, bool IsText)> PartsOf(Step step) => step.Action switch
    {
        StepAction.Ask { Until: { } until } ask => [("until", until, true), ("edge", ask.Edge, false), ("lasting", step.Lasting, false), ("every", step.Every, false)],
        StepAction.Await condition => [("condition", condition.Condition, true), ("edge", condition.Edge, false), ("lasting", step.Lasting, false), ("every", step.Every, false)],
        StepAction.Judge judge => [("question", judge.Text, true)],
        StepAction.Enter enter => [("question", enter.Text, true), ("kind of answer", enter.Shape, false)],
        StepAction.Scan scan => [("question", scan.Text, true)],
        StepAction.Choose choose => [("question", choose.Text, true), ("choice", choose.Among, false)],
        StepAction.Read read => [("channel", read.Channel, false), ("channel's description", Of(read.Description), false)],
        StepAction.Sample sample =>
        [
            ("channel", sample.Channel, false), ("channel's description", Of(sample.Description), false), ("for", sample.For, false),
            ("until", sample.Until, true), ("every", sample.Every, false),
        ],
        StepAction.SetTo set => [("action", set.Role + set.Target.Name, false), ("action's description", Of(set.Target), false), ("index", set.Index, false), ("value", set.To, false)],
        StepAction.Do act => [("action", act.Role + act.Target.Name, false), ("action's description", Of(act.Target), false), ("index", act.Index, false), ("value", act.With, false)],
        StepAction.Compute compute => [("unit", compute.Unit, false)],
        _ => [],
    };

    private static object?[] Of(ChannelDescription channel) => [channel.Shape, channel.Source, channel.IsEvent];

    private static object?[] Of(ActionDescription action) => [action.Returns, action.Source];

    private static string ChannelsOf(Expression expression, PlannedStep planned, CheckedSequence sequence) => string.Concat(expression.Channels.Select(use =>
        sequence.Roles.FirstOrDefault(role => role.Role == use.Role)?.Kind.Channels.GetValueOrDefault(use.Channel) is { } channel
            ? Text(planned, (object?[])[.. Of(channel), channel.Every, channel.MissingFails])
            : use.ToString()));

    private static string Conditions(PlacedStep step, Func<Node, Expression?> of) =>
        string.Concat(step.Nodes.Where(node => of(node.Node) is not null).Select(node => StructureText.Of(node.Planned.Arguments, of(node.Node))));

    private static string Text(PlannedStep planned, object? part) => StructureText.Of(planned.Arguments, part);
}
