using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Actions;

/// <summary>
/// <c>await</c> and <c>ask … until</c>: waits until a condition has become true, and has stayed so. The step ends at the
/// stamp of the reading that decides, not at the moment this code runs.
/// </summary>
internal sealed class ConditionAction
{
    private readonly Attempt _attempt;
    private readonly bool _edge;
    private readonly TimeSpan _lasting;
    private readonly TaskCompletionSource<AttemptEnd> _end = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly ConditionWatch _watch;
    private readonly ConditionWatch.Condition _until;
    private readonly ConditionWatch.Condition? _since;
    private ITimer? _lasts;
    private long? _trueAt;
    private long? _sinceAt;
    private bool _seenFalse;

    private ConditionAction(Attempt attempt, Expression until, bool edge)
    {
        (_attempt, _edge) = (attempt, edge);
        _lasting = attempt.Step.Lasting is { } lasting ? Operands.Duration(lasting, attempt.Scope) : TimeSpan.Zero;
        _watch = new ConditionWatch(attempt.Run, attempt.Scope, attempt.Planned.Id, attempt.Start, Changed);
        _until = _watch.Add(until, attempt.Planned.Arguments);
        if (attempt.Step.Since is { } since) _since = _watch.Add(since, attempt.Planned.Arguments);
    }

    /// <summary><c>await</c>.</summary>
    public static ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Await action) =>
        new ConditionAction(attempt, action.Condition, action.Edge).WaitAsync(null);

    /// <summary><c>ask … until</c>: the prompt is withdrawn when the condition ends the step.</summary>
    public static ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Ask ask, string? screen) =>
        new ConditionAction(attempt, ask.Until!, ask.Edge).WaitAsync(cancel => PromptAction.AskAsync(attempt, PromptKind.Act, ask.Text, screen, cancel));

    private async ValueTask<AttemptEnd> WaitAsync(Func<CancellationToken, Task<Answer?>>? ask)
    {
        using var withdrawn = new CancellationTokenSource();
        using var cut = _attempt.Ends.UnsafeRegister(static action => ((ConditionAction)action!).Limit(), this);
        try
        {
            if (ask is not null) _ = RelayAsync(ask(withdrawn.Token));
            var every = _attempt.Step.Every is { } written ? Operands.Duration(written, _attempt.Scope) : (TimeSpan?)null;
            _watch.Begin(every);
            var end = await _end.Task;
            if (end.Ending == Ending.ConditionUnknownAtLimit) end = await UnknownAsync(end);
            return end;
        }
        finally
        {
            _watch.Dispose();
            _lasts?.Dispose();
            withdrawn.Cancel();
        }
    }

    private void Changed(long stamp)
    {
        if (_end.Task.IsCompleted) return;
        if (_sinceAt is null && _since?.IsTrue == true) _sinceAt = stamp;
        if (_until.IsTrue == false) _seenFalse = true;
        if (_until.IsTrue != true || (_edge && !_seenFalse))
        {
            _trueAt = null;
            _lasts?.Dispose();
            _lasts = null;
            return;
        }

        if (_trueAt is not null) return;
        _trueAt = stamp;
        if (_lasting == TimeSpan.Zero) End(stamp);
        else _lasts = _attempt.Run.Time.CreateTimer(_ => End(_attempt.Run.Now), null, _lasting, Timeout.InfiniteTimeSpan);
    }

    private void End(long stamp)
    {
        try
        {
            _end.TrySetResult(new AttemptEnd(Ending.ConditionTrue, stamp) { Criteria = Takes() is { } takes ? [takes] : [] });
        }
        catch (ExpressionFault fault)
        {
            _end.TrySetResult(new AttemptEnd(Ending.ExpressionFault, stamp) { Detail = fault.Message });
        }
    }

    /// <summary>The time from the start, or from the first moment of <c>since</c>, to the first moment of the ending condition.</summary>
    private CriterionResult? Takes()
    {
        if (_attempt.Step.Takes is null) return null;
        var from = _since is null ? _attempt.Start : _sinceAt ?? throw new ExpressionFault($"'{_attempt.Step.Since}' was never seen true, so there is no time to judge");
        var seconds = (decimal)_attempt.Run.Between(from, _trueAt!.Value).Ticks / TimeSpan.TicksPerSecond;
        return StepJudging.Time(_attempt.Planned, _attempt.Scope, seconds);
    }

    private void Limit() => _end.TrySetResult(_attempt.Cut(AtLimit));

    private AttemptEnd AtLimit() => _until.IsTrue is null
        ? new AttemptEnd(Ending.ConditionUnknownAtLimit, _attempt.Run.Now)
        : new AttemptEnd(Ending.ConditionFalseAtLimit, _attempt.Run.Now) { Detail = WhyNot() };

    private string WhyNot() =>
        _until.IsTrue == false ? $"not seen within {Attempt.Text(_attempt.Within!.Value)}"
        : _trueAt is null ? $"was true from the start and was not let go within {Attempt.Text(_attempt.Within!.Value)}"
        : $"did not last {Attempt.Text(_lasting)}";

    private async ValueTask<AttemptEnd> UnknownAsync(AttemptEnd end)
    {
        if (_until.Fault is { } fault) return end with { Ending = Ending.ExpressionFault, Detail = fault };
        if (_watch.NewestMissing is not var (channel, reading)) return end with { Cause = MissingCause.Silent, Detail = "no reading came" };
        var missing = await _attempt.MissingAsync(channel, _attempt.Run.Device(channel.Role).Kind.Channels[channel.Channel], reading);
        return missing with { Ending = Ending.ConditionUnknownAtLimit, Stamp = end.Stamp };
    }

    private async Task RelayAsync(Task<Answer?> asked)
    {
        try
        {
            // A device ends this step; a person can only stop the run or pass the step over. No answer: withdrawn.
            if (await asked is var answer and (Answer.Stop or Answer.PassedOver)) _end.TrySetResult(PromptAction.Ended(_attempt, answer));
        }
        catch (Exception trouble)
        {
            _end.TrySetException(trouble);
        }
    }
}
