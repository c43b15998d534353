using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
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
    public required TimeLimits Limits { get; init; }
    public required IReadOnlyDictionary<string, BoundDevice> Devices { get; init; }

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
