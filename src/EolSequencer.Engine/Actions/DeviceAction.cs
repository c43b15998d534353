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
        return ActAsync(attempt, set.Role, set.Index, new ActionRequest(set.Target, Resolve(attempt, set.Index), to, ImmutableDictionary<string, Value>.Empty));
    }

    public static ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Do act)
    {
        var with = act.With.ToImmutableDictionary(argument => argument.Name, argument => Operands.Value(argument.Value, attempt.Scope));
        return ActAsync(attempt, act.Role, act.Index, new ActionRequest(act.Target, Resolve(attempt, act.Index), null, with));
    }

    private static async ValueTask<AttemptEnd> ActAsync(Attempt attempt, string role, IndexUse? index, ActionRequest request)
    {
        attempt.Run.Log.Append((n, at) => new Begun { N = n, At = at, Step = attempt.Planned.Id, Attempt = attempt.Number });
        var device = attempt.Run.Device(role);
        var use = new ChannelUse(role, request.Action.Name, index);
        var reading = await attempt.InTimeAsync(device.Device.ActAsync(request, attempt.Ends), device, use, request.Index);
        if (reading.Missing is not null) return await attempt.MissingAsync(use, AsChannel(request.Action), reading);
        return reading.Value is { } value ? attempt.Found(value, reading.Stamp) : new AttemptEnd(Ending.Confirmed, reading.Stamp);
    }

    private static string? Resolve(Attempt attempt, IndexUse? index) => index?.Resolve(attempt.Planned.Arguments);

    /// <summary>The link of an action is found like that of a channel.</summary>
    private static ChannelDescription AsChannel(ActionDescription action) =>
        new() { Name = action.Name, Shape = action.Returns ?? ValueShape.Truth };
}
