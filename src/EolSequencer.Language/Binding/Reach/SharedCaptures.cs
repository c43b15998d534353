using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>
/// A group that captures from an exclusive device has it until it ends: its own steps use it between the readings of the trace,
/// but whoever runs beside it would have to wait for a whole group, or would set the device up otherwise in the midst of a trace.
/// </summary>
internal sealed class SharedCaptures
{
    private readonly HashSet<string> _exclusive;
    private readonly Report _report;

    private SharedCaptures(CheckedSequence sequence, Report report)
    {
        _exclusive = [.. sequence.Roles.Where(role => role.Kind.IsExclusive).Select(role => role.Role)];
        _report = report;
    }

    public static void Check(CheckedSequence sequence, Report report)
    {
        var check = new SharedCaptures(sequence, report);
        if (check._exclusive.Count > 0) check.Walk([.. sequence.Prepare, .. sequence.Steps, .. sequence.Always, .. sequence.AfterVerdict]);
    }

    private void Walk(IEnumerable<Node> nodes)
    {
        foreach (var node in nodes)
        {
            Compare(Lanes(node));
            Walk(Inside(node));
        }
    }

    /// <summary>What of a node runs side by side; the turns of an any-order group are like each other, so two stand for all.</summary>
    private static List<IEnumerable<Node>> Lanes(Node node) => node switch
    {
        Together together => [.. together.Branches.Select(branch => (IEnumerable<Node>)branch.Children)],
        Group { AnyOrder: true, Each.IsEmpty: false } group => [group.Children, group.Children],
        Group { AnyOrder: true } group => [.. group.Children.Select(child => (IEnumerable<Node>)[child])],
        _ => [],
    };

    private static IEnumerable<Node> Inside(Node node) => node switch
    {
        Together together => together.Branches.SelectMany(branch => branch.Children),
        Group group => group.Children.Concat(group.Always),
        _ => [],
    };

    private void Compare(List<IEnumerable<Node>> lanes)
    {
        var all = lanes.ConvertAll(lane => All(lane).ToList());
        var used = all.ConvertAll(lane => lane.SelectMany(Used).ToHashSet(StringComparer.Ordinal));
        foreach (var (number, lane) in all.Index())
        {
            foreach (var group in lane.OfType<Group>())
            {
                var shared = Captured(group).FirstOrDefault(role => _exclusive.Contains(role) && used.Index().Any(other => other.Index != number && other.Item.Contains(role)));
                if (shared is not null) _report.Add(SequenceCodes.SharedCapture, group.Place, $"'{group.Id}' captures from '{shared}', which serves one at a time, and what runs beside it uses '{shared}' as well");
            }
        }
    }

    private static IEnumerable<Node> All(IEnumerable<Node> nodes) => nodes.SelectMany(node => All(Inside(node)).Prepend(node));

    private static IEnumerable<string> Used(Node node) => node switch
    {
        Step step => StepDevices.Of(step),
        Group group => Captured(group),
        _ => [],
    };

    private static IEnumerable<string> Captured(Group group) => (group.Capture?.Channels ?? []).Select(channel => channel.Channel.Role);
}
