using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>Steps whose value nobody judges or uses, and steps that may wait for ever.</summary>
/// <remarks>
/// Exempt from a time limit: what a person only confirms; what ends by itself (<c>wait</c>, <c>compute</c>, <c>sample … for</c>);
/// exchanges with a device, which have limits of their own; and <c>always</c>, where the run sets one. Exempt from being judged:
/// what says <c>record-only</c>, a sample without <c>reduce</c>, which is there for its series, and what another step names.
/// </remarks>
internal static class StepAdvice
{
    public static void Run(CheckedSequence sequence, NodeInstances instances, Report report)
    {
        var used = UsedResults(instances);
        var limited = Steps(sequence.Always).Concat(GroupAlways([.. sequence.Prepare, .. sequence.Steps, .. sequence.AfterVerdict])).ToHashSet(ReferenceEqualityComparer.Instance);
        var unused = new Dictionary<SourcePlace, (Step Step, bool IsUsed)>();
        foreach (var instance in instances.All)
        {
            if (instance.Node is not Step step) continue;
            if (step.Within is null && MayWait(step.Action) && !limited.Contains(step))
            {
                report.Add(AdviceCodes.MayWaitForEver, step.Place, $"nothing ends '{step.Id}' when what it waits for does not come");
            }

            if (FindsUnjudged(step)) unused[step.Place] = (step, used.Contains(instance.Id) || unused.TryGetValue(step.Place, out var known) && known.IsUsed);
        }

        foreach (var (place, (step, isUsed)) in unused)
        {
            if (!isUsed) report.Add(AdviceCodes.ValueUnused, place, $"nothing is expected of '{step.Id}', and no other step names its value");
        }
    }

    private static bool MayWait(StepAction action) => action switch
    {
        StepAction.Ask ask => ask.Until is not null,
        StepAction.Judge or StepAction.Enter or StepAction.Scan or StepAction.Choose or StepAction.Await => true,
        StepAction.Sample sample => sample.Until is not null,
        StepAction.Read read => read.Description.IsEvent,
        _ => false,
    };

    private static bool FindsUnjudged(Step step) => step is { Expect: null, RecordOnly: false, Serial: null } && step.Action switch
    {
        StepAction.Sample sample => sample.Reduce != Reduction.Count,
        StepAction.Read or StepAction.Enter or StepAction.Scan or StepAction.Choose or StepAction.Compute => true,
        _ => false,
    };

    // The result of one index of a channel that is read as a whole is one of the step in front of the bracket.
    private static HashSet<string> UsedResults(NodeInstances instances)
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (var instance in instances.All)
        {
            foreach (var use in NodeExpressions.Of(instance.Node).SelectMany(expression => expression.Results))
            {
                var id = use.Resolve(instance.Arguments, instance.Id);
                used.Add(id);
                if (id.EndsWith(']')) used.Add(id[..id.LastIndexOf('[')]);
            }
        }

        return used;
    }

    private static IEnumerable<Step> Steps(IEnumerable<Node> nodes) => nodes.SelectMany(node => node switch
    {
        Step step => [step],
        Group group => Steps(group.Children).Concat(Steps(group.Always)),
        Together together => together.Branches.SelectMany(branch => Steps(branch.Children)),
        _ => [],
    });

    private static IEnumerable<Step> GroupAlways(IEnumerable<Node> nodes) => nodes.SelectMany(node => node switch
    {
        Group group => Steps(group.Always).Concat(GroupAlways(group.Children)),
        Together together => together.Branches.SelectMany(branch => GroupAlways(branch.Children)),
        _ => [],
    });
}
