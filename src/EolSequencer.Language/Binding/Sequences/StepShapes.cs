using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Which keys a step may have, by its action.</summary>
internal static class StepShapes
{
    private static readonly string[] Common = [.. NodeRules.Keys, "within", "class", "on-fail", "record-only", "nonconformity"];
    private static readonly string[] Judged = ["expect", "decision", "uncertainty"];
    private static readonly string[] Ending = ["edge", "lasting", "since", "takes", "every"];

    private static readonly Dictionary<string, MapShape> ByAction = new(StringComparer.Ordinal)
    {
        ["ask"] = Of("ask", [], ["until", "picture", "if-missing", .. Ending]),
        ["judge"] = Of("judge", [], ["picture"]),
        ["enter"] = Of("enter", [], ["as", "unit", "picture", .. Judged]),
        ["scan"] = Of("scan", [], ["picture", .. Judged]),
        ["choose"] = Of("choose", ["among"], ["picture", .. Judged]),
        ["read"] = Of("read", [], ["show", "if-missing", .. Judged]),
        ["sample"] = Of("sample", [], ["for", "until", "every", "reduce", "may-miss", "show", "if-missing", .. Judged]),
        ["await"] = Of("await", [], ["show", "if-missing", .. Ending]),
        ["wait"] = new MapShape("a step with 'wait'", ["step", "wait"], [.. NodeRules.Keys]),
        ["set"] = Of("set", ["to"], ["if-missing", .. Judged]),
        ["do"] = Of("do", [], ["with", "show", "if-missing", .. Judged]),
        ["compute"] = Of("compute", [], ["unit", "if-missing", .. Judged]),
    };

    /// <summary>The actions, of which a step has exactly one.</summary>
    public static IReadOnlyList<string> Actions { get; } = [.. ByAction.Keys];

    /// <summary>Every key of every step; only to find the action.</summary>
    public static MapShape Any { get; } = new("a step", ["step"], [.. ByAction.Values.SelectMany(shape => shape.Keys).Where(key => key != "step").Distinct()]);

    /// <summary>The keys of a step with an action.</summary>
    public static MapShape Of(string action) => ByAction[action];

    private static MapShape Of(string action, string[] required, string[] optional) =>
        new($"a step with '{action}'", ["step", action, .. required], [.. Common, .. optional]);
}
