using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>
/// What of a sequence without a fault is probably not meant. It takes longer than loading does and stops nobody, so it is
/// for checking and not for running.
/// </summary>
internal static class AdviceChecks
{
    /// <returns>The plan, which part of the advice is about.</returns>
    public static SequencePlan Run(CheckedSequence sequence, NodeInstances instances, BindingContext context, Report report)
    {
        StepAdvice.Run(sequence, instances, report);
        WhenAdvice.Run(sequence.Place.File, instances, report);
        LimitAdvice.Run(context.Vehicle.Limits.Values, instances.Vehicles, report);
        return PlanWalk.Run(sequence, instances, context.Plant, report);
    }
}
