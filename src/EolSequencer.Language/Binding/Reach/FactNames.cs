using System.Collections.Immutable;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>Which facts of the order conditions ask for. A name too many only makes more combinations.</summary>
internal static class FactNames
{
    private const string Prefix = "order.";

    public static IEnumerable<string> Of(CheckedSequence sequence) =>
        new[] { sequence.Prepare, sequence.Steps, sequence.Always, sequence.AfterVerdict }.SelectMany(Of);

    public static IEnumerable<string> Of(VehicleType type, ImmutableDictionary<string, LimitDefinition> limits) =>
    [
        .. type.ControlUnits.SelectMany(unit => Of(unit.When)),
        .. type.Bus.Channels.Values.SelectMany(channel => Of(channel.When)),
        .. type.Bus.Actions.Values.SelectMany(action => Of(action.When)),
        .. limits.Values.OfType<LimitDefinition.Rows>().SelectMany(limit => limit.All).SelectMany(row => Of(row.When)),
    ];

    private static IEnumerable<string> Of(ImmutableArray<Node> nodes) => nodes.SelectMany(Of);

    private static IEnumerable<string> Of(Node node) => Of(node.When).Concat(node switch
    {
        Group group => Of(group.Children).Concat(Of(group.Always)),
        Together together => together.Branches.SelectMany(branch => Of(branch.Children)),
        _ => [],
    });

    private static IEnumerable<string> Of(Expression? condition)
    {
        var text = condition?.Text ?? "";
        for (var at = text.IndexOf(Prefix, StringComparison.Ordinal); at >= 0; at = text.IndexOf(Prefix, at + 1, StringComparison.Ordinal))
        {
            var start = at + Prefix.Length;
            var end = start;
            while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] == '_')) end++;
            yield return text[start..end];
        }
    }
}
