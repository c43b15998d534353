using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Which keys a step may have, by its action.</summary>
internal static class StepShapes
{
    private static readonly MapKey Id = new("step", Ids.NameForm, "id, unique in its group");
    private static readonly MapKey Until = new("until", Forms.Expression, "the condition that ends it");
    private static readonly MapKey Edge = new("edge", Forms.YesNo, "the condition must be seen false before it counts");
    private static readonly MapKey Show = new("show", Forms.Texts, "a text the operator sees meanwhile; it ends nothing");
    private static readonly MapKey Picture = new("picture", Forms.Text, "path of a picture beside the prompt, from the plant's folder");

    private static readonly MapKey[] Common =
    [
        .. NodeRules.Keys,
        DefaultsBinder.WithinKey,
        DefaultsBinder.ClassKey,
        DefaultsBinder.OnFailKey,
        new("record-only", Forms.YesNo, "what is found is recorded and counts as none"),
        NonconformityBinder.Key,
        new("requirement", Forms.OneOrMore(Forms.Text), "numbers of the requirements that the step shows to be met"),
        new("repair", Forms.Texts, "what to look at first when it did not pass"),
        new("planned", Forms.Duration(TimeSpan.Zero, PlannedTimesBinder.Most), "what a plan counts for the step"),
    ];

    private static readonly MapKey[] Judged = StepJudging.Keys;

    private static readonly MapKey[] Recorded = SerialBinder.Keys;

    private static readonly MapKey[] Ending =
    [
        Edge,
        new("lasting", Forms.Time, "how long the ending condition must stay true"),
        new("since", Forms.Expression, "from when 'takes' counts; the start of the step if nothing is said"),
        StepJudging.TakesKey,
        DefaultsBinder.EveryKey,
    ];

    private static readonly MapShape[] All =
    [
        Of("ask", Forms.Texts, "a person does something; ends when 'until' becomes true, without it when confirmed", [], [Until, Picture, StepBinder.IfMissingKey, .. Ending]),
        Of("judge", Forms.Texts, "a person says ok or not ok", [], [Picture]),
        Of("enter", Forms.Texts, "a person types a value", [], [new("as", Shapes.Form, "type of the value; follows from 'expect' if nothing is said"), new("unit", Forms.UnitText, "unit of the value"), Picture, .. Judged, .. Recorded]),
        Of("scan", Forms.Texts, "a person scans a code; it compares and never identifies", [], [Picture, .. Judged, .. Recorded]),
        Of("choose", Forms.Texts, "a person picks one word", [new("among", Ids.Choices, "the words to pick from")], [Picture, .. Judged]),
        Of("read", Forms.Named(Subject.Channel), "takes one reading of a channel", [], [Show, StepBinder.IfMissingKey, .. Judged, .. Recorded]),
        Of("sample", Forms.Named(Subject.Channel), "takes readings of a channel for some time, or until a condition is true", [],
            [
                new("for", Forms.Time, "how long; this or 'until'"),
                Until,
                DefaultsBinder.EveryKey,
                DeviceReads.ReduceKey,
                new("may-miss", Forms.Whole(0, 1_000_000), "how many readings may be missing"),
                Show,
                StepBinder.IfMissingKey,
                .. Judged,
            ], "for", "until"),
        Of("await", Forms.Expression, "waits until a condition is true", [], [Show, StepBinder.IfMissingKey, .. Ending]),
        new MapShape("a step with 'wait'", [Id, new("wait", Forms.Time, "waits until the time is over")], [.. NodeRules.Keys]),
        Of("set", Forms.Named(Subject.Action), "sets an output of a device; ends when it confirms", [new("to", Forms.Either(Forms.Value, Forms.List(Forms.Text)), "the value it is set to")], [StepBinder.IfMissingKey, .. Judged]),
        Of("do", Forms.Named(Subject.Action), "a device does something; ends when it confirms", [],
            [new("with", Forms.Names(Forms.Text, Forms.Either(Forms.Value, Forms.List(Forms.Text))), "the values of the action"), Show, StepBinder.IfMissingKey, .. Judged]),
        Of("compute", Forms.Expression, "C# over readings and results; ends at once", [], [new("unit", Forms.UnitText, "unit of a bare number"), StepBinder.IfMissingKey, .. Judged]),
    ];

    private static readonly Dictionary<string, MapShape> ByAction = All.ToDictionary(shape => shape.Required[1], StringComparer.Ordinal);

    /// <summary>The actions, of which a step has exactly one.</summary>
    public static IReadOnlyList<string> Actions { get; } = [.. ByAction.Keys];

    /// <summary>What a step looks like, by its action.</summary>
    public static ValueForm Form { get; } = new ValueForm.Cases("a step", [.. ByAction.Select(one => (one.Key, Forms.Map(one.Value)))]);

    /// <summary>Every key of every step; only to find the action.</summary>
    public static MapShape Any { get; } = new("a step", [Id], [.. ByAction.Values.SelectMany(shape => shape.AllKeys).DistinctBy(key => key.Name).Where(key => key != Id)]);

    /// <summary>The keys of a step with an action.</summary>
    public static MapShape Of(string action) => ByAction[action];

    private static MapShape Of(string action, ValueForm form, string meaning, MapKey[] required, MapKey[] optional, params string[] exactlyOne) =>
        new($"a step with '{action}'", [Id, new(action, form, meaning), .. required], [.. Common, .. optional], exactlyOne);
}
