using System.Collections.Immutable;
using EolSequencer.Engine.Planning;

namespace EolSequencer.Station.Retesting;

/// <summary>
/// What a retest repeats: the steps that did not pass, each with the rest of its group; the steps that are judged from them; and what
/// any of these is judged from. Everything before and after the steps runs anyhow.
/// </summary>
internal static class RetestList
{
    /// <param name="plan">The plan of the vehicle by the sequence that is repeated.</param>
    /// <param name="open">Full ids of the steps that did not pass.</param>
    /// <returns>Ids of groups and steps in written order; empty when none of the steps is in the plan's steps.</returns>
    public static ImmutableArray<string> Of(Plan plan, IReadOnlySet<string> open)
    {
        var needs = new StepNeeds(plan);
        var repeated = new HashSet<string>(needs.Steps.Where(open.Contains), StringComparer.Ordinal);
        Grow(repeated, step => needs.Steps.Where(other => needs.NeedsOf(other).Contains(step)));
        Grow(repeated, step => needs.Steps.Where(other => needs.PartOf(other) == needs.PartOf(step)).Concat(needs.NeedsOf(step)));
        return [.. needs.Steps.Where(repeated.Contains).Select(needs.PartOf).Distinct()];
    }

    private static void Grow(HashSet<string> steps, Func<string, IEnumerable<string>> more)
    {
        var waiting = new Queue<string>(steps);
        while (waiting.TryDequeue(out var step))
        {
            foreach (var next in more(step).Where(steps.Add).ToList()) waiting.Enqueue(next);
        }
    }
}
