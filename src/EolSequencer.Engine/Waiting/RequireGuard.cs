using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Engine.Waiting;

/// <summary>Watches a condition that must hold all the time, and halts what it guards when it is lost.</summary>
internal sealed class RequireGuard : IDisposable
{
    private readonly Requirement _requirement;
    private readonly Halt _halt;
    private readonly ConditionWatch _watch;
    private readonly ConditionWatch.Condition _that;
    private readonly TaskCompletionSource _known = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private RequireGuard(RunServices run, PlannedNode node, Requirement requirement, Halt halt)
    {
        (_requirement, _halt) = (requirement, halt);
        _watch = new ConditionWatch(run, run.ScopeOf(node), node.Id, run.Now, _ => Changed());
        _that = _watch.Add(requirement.That, node.Arguments);
    }

    /// <summary>Begins to watch; completes when the condition is known for the first time, true or lost.</summary>
    public static async Task<RequireGuard> BeginAsync(RunServices run, PlannedNode node, Requirement requirement, Halt halt)
    {
        var guard = new RequireGuard(run, node, requirement, halt);
        guard._watch.Begin(null);
        using var halted = halt.Token.Register(() => guard._known.TrySetResult());
        await guard._known.Task;
        return guard;
    }

    public void Dispose() => _watch.Dispose();

    private void Changed()
    {
        var unknownForGood = _that.IsTrue is null && (_that.Fault is not null || _watch.NewestMissing is not null);
        if (_that.IsTrue == true) _known.TrySetResult();
        else if (_that.IsTrue == false || unknownForGood) Lose();
    }

    private void Lose()
    {
        var why = _that.IsTrue == false ? "" : $" ({_that.Fault ?? _watch.NewestMissing?.Reading.Detail ?? "no reading"})";
        _halt.Raise(HaltKind.Lost, $"lost: {_requirement.That.Text}{why}");
        _known.TrySetResult();
    }
}
