using System.Collections.Immutable;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>
/// No number that came through binary floating point is compared exactly, however many steps it went through before.
/// Steps are shown to it in their written order.
/// </summary>
internal sealed class Exactness(ImmutableArray<DeviceRole> roles, PlaceBook places, Report report)
{
    private readonly Dictionary<string, DeviceKind> _kinds = roles.ToDictionary(role => role.Role, role => role.Kind, StringComparer.Ordinal);
    private readonly HashSet<string> _inexact = new(StringComparer.Ordinal);

    public void Check(NodeInstance instance)
    {
        if (instance.Node is not Step step) return;
        if (IsInexact(step.Action, instance))
        {
            _inexact.Add(instance.Id);
            if (Compared(step.Expect).Any())
            {
                report.Add(ExpectationCodes.Inexact, places.ExpectOf(step), $"the value of '{step.Id}' comes through floating point, its last digits mean nothing");
            }
        }

        foreach (var wanted in Compared(step.Expect).OfType<Operand.Computed>())
        {
            if (!IsInexact(wanted.Expression, instance)) continue;
            report.Add(ExpectationCodes.Inexact, wanted.Expression.Place, "this value comes through floating point, its last digits mean nothing");
        }
    }

    private static IEnumerable<Operand> Compared(Expectation? expect) => expect switch
    {
        Expectation.EqualTo equal => [equal.Wanted],
        Expectation.OneOf one => one.Wanted,
        Expectation.ByVehicle rows => rows.Rows.SelectMany(row => Compared(row.Is)),
        Expectation.ByIndex windows => windows.Windows.Values.SelectMany(Compared),
        _ => [],
    };

    private bool IsInexact(StepAction action, NodeInstance instance) => action switch
    {
        StepAction.Read read => Inexact.Is(ChannelOf(read.Channel)),
        StepAction.Sample sample => Inexact.Is(sample.Reduce, ChannelOf(sample.Channel)),
        StepAction.Compute compute => IsInexact(compute.Expression, instance),
        _ => false,
    };

    private bool IsInexact(Expression expression, NodeInstance instance) =>
        expression.Shape.Kind is ValueKind.Number or ValueKind.Time
        && (expression.IsInexact
            || expression.Channels.Concat(expression.Traces.Select(trace => trace.Channel)).Any(use => Inexact.Is(ChannelOf(use)))
            || expression.Results.Any(use => IsInexact(use.Resolve(instance.Arguments, instance.Id))));

    // One index of a channel that is read as a whole belongs to the step in front of the bracket.
    private bool IsInexact(string id) =>
        _inexact.Contains(id) || (id.EndsWith(']') && _inexact.Contains(id[..id.LastIndexOf('[')]));

    private ChannelDescription ChannelOf(ChannelUse use) => _kinds[use.Role].Channels[use.Channel];
}
