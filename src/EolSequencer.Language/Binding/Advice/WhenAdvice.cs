using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>Conditions that hold for no vehicle, or for every one that comes to them.</summary>
/// <remarks>
/// All instances of a step count together, those of every loop value and of every use of a fragment. Of a sample of
/// vehicles nothing is concluded. A fragment is written for more than one use, so of its steps it is not said that they always apply.
/// </remarks>
internal static class WhenAdvice
{
    /// <param name="file">The file of the sequence itself.</param>
    public static void Run(string file, NodeInstances instances, Report report)
    {
        if (instances.Vehicles.IsSample) return;
        foreach (var same in instances.All.Where(instance => instance.Node.When is not null).GroupBy(instance => instance.Node.When!.Place))
        {
            var comes = same.Where(instance => !instance.Before.Maybe.IsEmpty).ToList();
            if (comes.Count == 0) continue;
            var when = comes[0].Node.When!;
            if (comes.All(instance => instance.Applies.Maybe.IsEmpty))
            {
                report.Add(AdviceCodes.NeverApplies, when.Place, $"no vehicle that comes here has  {when.Text}");
            }
            else if (when.Place.File == file && comes.All(instance => instance.Before.Maybe.Without(instance.Applies.Surely).IsEmpty))
            {
                report.Add(AdviceCodes.AlwaysApplies, when.Place, $"every vehicle that comes here has  {when.Text}");
            }
        }
    }
}
