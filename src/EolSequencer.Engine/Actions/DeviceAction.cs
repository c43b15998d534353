using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Actions;

/// <summary><c>set</c> and <c>do</c>: a device acts and confirms.</summary>
internal static class DeviceAction
{
    public static ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.SetTo set)
    {
        var to = Operands.Value(set.To, attempt.Scope);
        return ActAsync(attempt, set.Role, new ActionRequest(set.Target, to, ImmutableDictionary<string, Value>.Empty));
    }

    public static ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Do act)
    {
        var with = act.With.ToImmutableDictionary(argument => argument.Name, argument => Operands.Value(argument.Value, attempt.Scope));
        return ActAsync(attempt, act.Role, new ActionRequest(act.Target, null, with));
    }

    private static async ValueTask<AttemptEnd> ActAsync(Attempt attempt, string role, ActionRequest request)
    {
        attempt.Run.Log.Append((n, at) => new Begun { N = n, At = at, Step = attempt.Planned.Id, Attempt = attempt.Number });
        var device = attempt.Run.Device(role);
        var reading = await attempt.InTimeAsync(device.Device.ActAsync(request, attempt.Ends));
        var use = new ChannelUse(role, request.Action.Name, null);
        attempt.Note(device, use, null, reading);
        if (reading.Missing is not null) return await attempt.MissingAsync(use, AsChannel(request.Action), reading);
        return reading.Value is { } value ? attempt.Found(value, reading.Stamp) : new AttemptEnd(Ending.Confirmed, reading.Stamp);
    }

    /// <summary>The link of an action is found like that of a channel.</summary>
    private static ChannelDescription AsChannel(ActionDescription action) =>
        new() { Name = action.Name, Shape = action.Returns ?? ValueShape.Truth };
}
