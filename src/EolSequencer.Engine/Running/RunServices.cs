using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Resuming;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>What every part of one run uses. Nothing in it changes while the run goes on but what its members say of themselves.</summary>
internal sealed class RunServices
{
    /// <summary>How often a polled channel is read in a condition when nothing else is said.</summary>
    public static readonly TimeSpan UsualPoll = TimeSpan.FromMilliseconds(100);

    public required TimeProvider Time { get; init; }
    public required EventLog Log { get; init; }
    public required ResultBook Results { get; init; }
    public required Order Order { get; init; }
    public required PromptDesk Prompts { get; init; }
    public required IOperator Operator { get; init; }
    public required ILiveValues Live { get; init; }
    public required IPartSerials Serials { get; init; }
    public required TimeLimits Limits { get; init; }
    public required IReadOnlyDictionary<string, BoundDevice> Devices { get; init; }

    /// <summary>What came before the run broke off; null: it began here.</summary>
    public RunPast? Past { get; init; }

    /// <summary>The verdict, once the steps are over.</summary>
    public Verdict? Decided { get; set; }

    /// <summary>Why the sequence itself stopped the run, for people; the first reason wins. Null: it did not.</summary>
    public string? Stopped { get; private set; }

    /// <summary>The sequence says that this stops the run.</summary>
    public void StopFor(string reason) => Stopped ??= reason;

    /// <summary>A role that the station was checked to have.</summary>
    public BoundDevice Device(string role) => Devices[role];

    public long Now => Time.GetTimestamp();

    public TimeSpan Between(long from, long to) => Time.GetElapsedTime(from, to);

    /// <summary>Whether all of a node had its results before the run broke off.</summary>
    public bool IsOver(PlannedNode node) => Past is not null && Plan.StepsOf(node).All(step => !Results.IsOpen(step.Id));

    /// <summary>Whether the run broke off inside a node.</summary>
    public bool IsUnderWay(PlannedNode node) => Past is not null && Plan.StepsOf(node) is var steps && steps.Any(step => Results.IsOpen(step.Id)) && steps.Any(step => !Results.IsOpen(step.Id));

    /// <summary>How the run goes on behind a node that is over: a step of it may have stopped it.</summary>
    public Flow FlowBehind(PlannedNode node)
    {
        var stopping = Plan.StepsOf(node).FirstOrDefault(step => step.Step.OnFail == OnFail.Stop && Results.Counted(step.Id) > Verdict.Pass);
        if (stopping is null) return Flow.GoOn;
        StopFor($"'{stopping.Id}' did not pass, which stops the run");
        return Flow.Stop;
    }

    /// <summary>Nodes are to run once more: what their steps had come to does not count any more.</summary>
    public void Forget(ImmutableArray<PlannedNode> nodes)
    {
        foreach (var step in Plan.StepsOf(nodes))
        {
            Results.Forget(step.Id);
            Past?.Settle(step.Id);
        }
    }

    /// <summary>What the expressions of a node see.</summary>
    public RunScope ScopeOf(PlannedNode node) => new(Order, Results, node.Id, node.Arguments) { Decided = Decided };
}

/// <summary>A device in its role.</summary>
internal sealed class BoundDevice(IDevice device, DeviceKind kind, EventLog log)
{
    private bool _lost;

    public IDevice Device => device;

    public DeviceKind Kind => kind;

    /// <summary>For exclusive devices: whose turn it is.</summary>
    public Turnstile Turns { get; } = new();

    /// <summary>Writes down when the link breaks and when it is back.</summary>
    public void Note(in Reading reading)
    {
        var down = reading.Missing == MissingCause.LinkDown;
        if (down == _lost) return;
        _lost = down;
        var detail = reading.Detail ?? "";
        log.Append((n, at) => down
            ? new Model.Events.DeviceLost { N = n, At = at, Role = device.Role, Cause = detail }
            : new Model.Events.DeviceBack { N = n, At = at, Role = device.Role });
    }
}
