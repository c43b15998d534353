using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>A step that names a result finds it on every vehicle that reaches the step, unless it says <c>.or(…)</c>.</summary>
internal sealed class ResultPresence
{
    private readonly Dictionary<string, NodeInstance> _byId = new(StringComparer.Ordinal);
    private readonly PossibleVehicles _vehicles;
    private readonly Report _report;

    public ResultPresence(ImmutableArray<NodeInstance> instances, PossibleVehicles vehicles, Report report)
    {
        _vehicles = vehicles;
        _report = report;
        foreach (var instance in instances) _byId.TryAdd(instance.Id, instance);
    }

    public void Check(NodeInstance instance)
    {
        foreach (var expression in NodeExpressions.Of(instance.Node))
        {
            foreach (var use in expression.Results)
            {
                if (!use.Optional) Check(use, expression, instance);
            }
        }
    }

    private void Check(ResultUse use, Expression expression, NodeInstance asker)
    {
        var wanted = use.Resolve(asker.Arguments, asker.Id);
        if (Find(wanted) is not { } found) return;
        if (asker.Reached.Maybe.Without(found.Reached.Surely).First is not { } lacking) return;
        _report.Add(SequenceCodes.ResultNotOnVehicle, expression.Place, $"{wanted} has no result on a vehicle with {_vehicles.Describe(lacking)}, which reaches this step");
    }

    // The result of one index of a channel that is read as a whole belongs to the step in front of the bracket.
    private NodeInstance? Find(string id)
    {
        if (_byId.TryGetValue(id, out var found)) return found;
        return id.EndsWith(']') && id.LastIndexOf('[') is var open and > 0 ? _byId.GetValueOrDefault(id[..open]) : null;
    }
}
