using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>A step that names a trace finds it on every vehicle that reaches the step, with the index it asks for.</summary>
/// <remarks>Whether the channel exists on the vehicle is asked by <see cref="DevicePresence"/>.</remarks>
internal sealed class TracePresence
{
    private readonly Dictionary<string, NodeInstance> _groups = new(StringComparer.Ordinal);
    private readonly PossibleVehicles _vehicles;
    private readonly Report _report;

    public TracePresence(ImmutableArray<NodeInstance> instances, PossibleVehicles vehicles, Report report)
    {
        (_vehicles, _report) = (vehicles, report);
        foreach (var instance in instances)
        {
            if (instance.Node is Group) _groups.TryAdd(instance.Id, instance);
        }
    }

    public void Check(NodeInstance asker)
    {
        foreach (var expression in NodeExpressions.Of(asker.Node))
        {
            foreach (var use in expression.Traces) Check(use, expression, asker);
        }
    }

    private void Check(TraceUse use, Expression expression, NodeInstance asker)
    {
        var id = use.Group.Resolve(asker.Arguments, asker.Id);
        if (!_groups.TryGetValue(id, out var group)) return;
        if (asker.Reached.Maybe.Without(group.Reached.Surely).First is { } lacking)
        {
            _report.Add(SequenceCodes.TraceNotOnVehicle, expression.Place, $"'{id}' leaves no trace on a vehicle with {_vehicles.Describe(lacking)}, which reaches this step");
            return;
        }

        var index = use.Channel.Index?.Resolve(asker.Arguments);
        var kept = ((Group)group.Node).Capture!.Channels.Where(one => one.Channel.Role == use.Channel.Role && one.Channel.Channel == use.Channel.Channel);
        if (kept.Any(one => one.Channel.Index is null || one.Channel.Index.Resolve(group.Arguments) == index)) return;
        _report.Add(SequenceCodes.NotCaptured, expression.Place, $"'{id}' does not capture {use.Channel.Resolve(asker.Arguments)}");
    }
}
