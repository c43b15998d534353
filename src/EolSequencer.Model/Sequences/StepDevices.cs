using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Sequences;

/// <summary>The devices that a step uses while it runs, by role.</summary>
public static class StepDevices
{
    /// <summary>Each role once, in the order of the alphabet: that of its action, and those that its conditions read. What only watches beside it (<c>require</c>) does not count.</summary>
    public static string[] Of(Step step) => [.. RolesOf(step).Distinct().Order(StringComparer.Ordinal)];

    private static IEnumerable<string> RolesOf(Step step)
    {
        switch (step.Action)
        {
            case StepAction.Read read: yield return read.Channel.Role; break;
            case StepAction.Sample sample: yield return sample.Channel.Role; break;
            case StepAction.SetTo set: yield return set.Role; break;
            case StepAction.Do act: yield return act.Role; break;
        }

        foreach (var expression in ExpressionsOf(step))
        {
            foreach (var channel in expression.Channels) yield return channel.Role;
        }
    }

    private static IEnumerable<Expression> ExpressionsOf(Step step)
    {
        if (step.Since is { } since) yield return since;
        switch (step.Action)
        {
            case StepAction.Ask { Until: { } until }: yield return until; break;
            case StepAction.Sample { Until: { } until }: yield return until; break;
            case StepAction.Await condition: yield return condition.Condition; break;
            case StepAction.Compute compute: yield return compute.Expression; break;
        }
    }
}
