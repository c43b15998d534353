using System.Runtime.CompilerServices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>
/// The turns of all exclusive devices that a step uses, taken in the order of their roles so that two steps never wait
/// for each other.
/// </summary>
internal sealed class DeviceTurns : IDisposable
{
    private static readonly ConditionalWeakTable<Step, string[]> KnownRoles = [];

    private readonly List<Turnstile.Turn> _turns = [];

    /// <summary>Whether a step uses an exclusive device at all.</summary>
    public static bool AreNeeded(RunServices run, Step step)
    {
        foreach (var role in InOrder(step))
        {
            if (run.Device(role).Kind.IsExclusive) return true;
        }

        return false;
    }

    public static async ValueTask<DeviceTurns?> EnterAsync(RunServices run, Step step, CancellationToken cancel)
    {
        if (!AreNeeded(run, step)) return null;
        var taken = new DeviceTurns();
        try
        {
            foreach (var role in InOrder(step))
            {
                if (run.Device(role).Kind.IsExclusive) taken._turns.Add(await run.Device(role).Turns.EnterAsync(cancel));
            }

            return taken;
        }
        catch
        {
            taken.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        foreach (var turn in _turns) turn.Dispose();
        _turns.Clear();
    }

    private static string[] InOrder(Step step) =>
        KnownRoles.GetValue(step, static step => [.. RolesOf(step).Distinct().Order(StringComparer.Ordinal)]);

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
