using EolSequencer.Model.Events;
using EolSequencer.Rehearsal.Replay;

namespace EolSequencer.Cli.Replaying;

/// <summary>One criterion of a step, as judged then and as judged by the revision.</summary>
/// <param name="Of">Empty for the step's value; an index, or <c>takes</c>.</param>
internal sealed record CriterionChange(string Of, CriterionResult? Was, CriterionResult? Is)
{
    public string? Value => Text(Is ?? Was);

    public bool HasOtherWindow => (Was?.Expected, Was?.Uncertainty, Was?.IsGuarded) != (Is?.Expected, Is?.Uncertainty, Is?.IsGuarded);

    private bool HasOtherVerdict => Was?.Verdict != Is?.Verdict;

    /// <summary>The criteria of a step: those with another verdict, else those judged by another window, else all of them.</summary>
    public static IReadOnlyList<CriterionChange> In(ReplayedStep step)
    {
        var names = step.Was.Criteria.Concat(step.Is.Criteria).Select(one => one.Of).Distinct();
        var all = names.Select(of => new CriterionChange(of, step.Was.Criteria.FirstOrDefault(one => one.Of == of), step.Is.Criteria.FirstOrDefault(one => one.Of == of))).ToList();
        var changed = all.FindAll(one => one.HasOtherVerdict);
        if (changed.Count == 0) changed = all.FindAll(one => one.HasOtherWindow);
        return changed.Count == 0 ? all : changed;
    }

    /// <summary>The window with its guard band, for people; empty when nothing was expected.</summary>
    public static string Window(CriterionResult? one) => one switch
    {
        null or { Expected: null } => "",
        { IsGuarded: true } => $"{one.Expected}, guarded by {one.Uncertainty}{(one.Unit is null ? "" : " " + one.Unit)}",
        _ => one.Expected,
    };

    private static string? Text(CriterionResult? one) => one?.Value is not { } value ? null : one.Unit is null ? value : $"{value} {one.Unit}";
}
