using EolSequencer.Engine.Planning;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Station.Retesting;

/// <summary>What belongs together in a plan: the part that each step is repeated with, and the steps whose findings it is judged from.</summary>
internal sealed class StepNeeds
{
    private readonly Dictionary<string, string> _part = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> _needs = new(StringComparer.Ordinal);
    private readonly List<(string Step, string Named)> _named = [];

    public StepNeeds(Plan plan)
    {
        foreach (var node in plan.Steps) Walk(node, null, []);
        foreach (var (step, named) in _named) _needs[step].UnionWith(StepsOf(named));
    }

    /// <summary>Every step, in written order.</summary>
    public List<string> Steps { get; } = [];

    /// <summary>
    /// The group instance that a step is repeated with, or the step itself when it is in none: the steps around it put the vehicle into
    /// the state that it is judged in. A group that keeps traces, or that says <c>resume: repeat</c>, is repeated as a whole.
    /// </summary>
    public string PartOf(string step) => _part[step];

    /// <summary>The steps whose results or traces a step names.</summary>
    public IReadOnlySet<string> NeedsOf(string step) => _needs[step];

    /// <summary>The steps of a group instance, of all instances of a group, or the step itself.</summary>
    private IEnumerable<string> StepsOf(string named) =>
        Steps.Where(one => one == named || one.StartsWith(named + ".", StringComparison.Ordinal) || one.StartsWith(named + "[", StringComparison.Ordinal));

    private void Walk(PlannedNode node, string? whole, List<string> around)
    {
        switch (node)
        {
            case PlannedStep step:
                Steps.Add(step.Id);
                _part[step.Id] = whole ?? ParentOf(step.Id);
                _needs[step.Id] = new HashSet<string>(StringComparer.Ordinal);
                foreach (var named in NamedBy(step, step.Step).Concat(around)) _named.Add((step.Id, named));
                break;
            case PlannedGroup group:
                var inside = whole ?? (group.Group is { Capture: not null } or { RepeatOnResume: true } ? group.Id : null);
                Walk(group.Children.AddRange(group.Always), inside, [.. around, .. NamedBy(group, group.Group)]);
                break;
            case PlannedLanes lanes:
                var together = whole ?? (lanes.Node is Group and ({ Capture: not null } or { RepeatOnResume: true }) ? lanes.Id : null);
                List<string> all = [.. around, .. NamedBy(lanes, lanes.Node)];
                foreach (var lane in lanes.Lanes) Walk(lane, together, all);
                Walk(lanes.Always, together, all);
                break;
        }
    }

    private void Walk(IEnumerable<PlannedNode> nodes, string? whole, List<string> around)
    {
        foreach (var node in nodes) Walk(node, whole, around);
    }

    private IEnumerable<string> NamedBy(PlannedNode planned, Node node) => NodeExpressions.Of(node)
        .SelectMany(expression => expression.Results.Concat(expression.Traces.Select(trace => trace.Group)).Select(result => result.Resolve(planned.Arguments, planned.Id)))
        .Concat(node.DependsOn.Select(dependency => Dependency(dependency.Name, planned.Id)));

    /// <summary>The nearest group or step of that name among those that stand before it.</summary>
    private string Dependency(string name, string asker)
    {
        for (var level = asker; ParentOf(level) is var parent && parent != level; level = parent)
        {
            if (StepsOf($"{parent}.{name}").Any()) return $"{parent}.{name}";
        }

        return name;
    }

    private static string ParentOf(string step)
    {
        // A loop value may hold a point, so the last one outside of brackets counts.
        var depth = 0;
        for (var at = step.Length - 1; at > 0; at--)
        {
            depth += step[at] switch { ']' => 1, '[' => -1, _ => 0 };
            if (depth == 0 && step[at] == '.') return step[..at];
        }

        return step;
    }
}
