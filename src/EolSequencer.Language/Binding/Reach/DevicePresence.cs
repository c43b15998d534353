using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>A step that a vehicle reaches finds its channels and actions on that vehicle.</summary>
/// <remarks>The channels of a <c>capture</c> are not asked for, only those whose trace a step names: what a vehicle lacks leaves no trace.</remarks>
internal sealed class DevicePresence(
    ImmutableArray<DeviceRole> roles, PossibleVehicles vehicles, PlaceBook places, Report report)
{
    private readonly Dictionary<string, DeviceKind> _kinds = roles.ToDictionary(role => role.Role, role => role.Kind, StringComparer.Ordinal);

    public void Check(NodeInstance instance)
    {
        foreach (var expression in NodeExpressions.Of(instance.Node))
        {
            foreach (var use in expression.Channels.Concat(expression.Traces.Select(trace => trace.Channel))) Check(use, expression.Place, instance);
        }

        if (instance.Node is not Step step) return;
        switch (step.Action)
        {
            case StepAction.Read read: Check(read.Channel, places.ActionOf(step), instance); break;
            case StepAction.Sample sample: Check(sample.Channel, places.ActionOf(step), instance); break;
            case StepAction.SetTo set: Check(set.Role, set.Target, set.Index, places.ActionOf(step), instance); break;
            case StepAction.Do act: Check(act.Role, act.Target, act.Index, places.ActionOf(step), instance); break;
        }
    }

    private void Check(ChannelUse use, SourcePlace place, NodeInstance instance)
    {
        var channel = _kinds[use.Role].Channels[use.Channel];
        Check(use.ToString(), Present(channel.When, channel.Indexes, use.Index, instance), place, instance);
    }

    private void Check(string role, ActionDescription action, IndexUse? index, SourcePlace place, NodeInstance instance) =>
        Check($"{role}.{action.Name}", Present(action.When, action.Indexes, index, instance), place, instance);

    private void Check(string what, Reached present, SourcePlace place, NodeInstance instance)
    {
        if (instance.Reached.Maybe.Without(present.Surely).First is not { } lacking) return;
        report.Add(SequenceCodes.NotOnVehicle, place, $"{what} does not exist on a vehicle with {vehicles.Describe(lacking)}, which reaches this step");
    }

    private Reached Present(Expression? when, ImmutableArray<IndexValue> indexes, IndexUse? index, NodeInstance instance)
    {
        var present = vehicles.Where(when, Arguments.None);
        if (index is null) return present;
        var value = indexes.FirstOrDefault(one => one.Value == index.Resolve(instance.Arguments));
        return value is null ? present : present.And(vehicles.Where(value.When, Arguments.None));
    }
}
