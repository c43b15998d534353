using EolSequencer.Language.Syntax;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads <c>defaults</c>, and the keys it shares with steps.</summary>
internal static class DefaultsBinder
{
    private static readonly Words<StepClass> Classes = new(("safety", StepClass.Safety), ("function", StepClass.Function), ("other", StepClass.Other));
    private static readonly Words<Model.Sequences.OnFail> OnFails = new(
        ("continue", Model.Sequences.OnFail.Continue), ("stop", Model.Sequences.OnFail.Stop), ("ask", Model.Sequences.OnFail.Ask));
    private static readonly Words<Decision> Decisions = new(("simple", Model.Judging.Decision.Simple), ("guarded", Model.Judging.Decision.Guarded));

    /// <summary>The keys that a step has too.</summary>
    public static MapKey WithinKey { get; } = new("within", Forms.Time, "the longest the step may take");

    public static MapKey ClassKey { get; } = new("class", Forms.Word(Classes), "how much a miss matters; function if nothing is said");

    public static MapKey OnFailKey { get; } = new("on-fail", Forms.Word(OnFails), "what happens after the last attempt; continue if nothing is said");

    public static MapKey DecisionKey { get; } = new("decision", Forms.Word(Decisions), "guarded: uncertainty is kept away from the window's ends");

    public static MapKey EveryKey { get; } = new("every", Forms.Time, "how often a condition asks, or a sample is taken");

    private static readonly MapShape Shape = new("the defaults", [], [WithinKey, ClassKey, OnFailKey, DecisionKey, EveryKey]);

    /// <summary>The key that holds them.</summary>
    public static MapKey Key { get; } = new("defaults", Forms.Map(Shape), "for all steps inside: within, class, on-fail, decision, every");

    /// <summary>The place with the defaults that a map may change.</summary>
    public static Scope Inside(MapReader keys, Scope scope)
    {
        if (!keys.Has("defaults") || keys.Open("defaults", Shape) is not { } inner) return scope;
        var around = scope.Defaults;
        return scope with
        {
            Defaults = new StepDefaults(
                Operands.Time(inner.Find("within"), "'within'", scope) ?? around.Within,
                Class(inner) ?? around.Class,
                OnFail(inner) ?? around.OnFail,
                Decision(inner) ?? around.Decision,
                Operands.Time(inner.Find("every"), "'every'", scope) ?? around.Every),
        };
    }

    public static StepClass? Class(MapReader keys) => keys.Word("class", Classes);

    public static OnFail? OnFail(MapReader keys) => keys.Word("on-fail", OnFails);

    public static Decision? Decision(MapReader keys) => keys.Word("decision", Decisions);
}
