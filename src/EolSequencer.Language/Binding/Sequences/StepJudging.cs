using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a step expects of its value and of the time it takes.</summary>
internal static class StepJudging
{
    private static readonly MapKey RecordOnly = new("record-only", Forms.YesNo, "what is found is recorded and counts as none");

    private static readonly MapShape Expect = new("an expectation", [new("is", Forms.Expectation, "what the value must be")], [RecordOnly]);
    private static readonly MapShape Takes = new("an expectation of time", [new("window", Forms.Expectation, "what the time must be")], [RecordOnly]);

    /// <summary>The keys about the value a step finds.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("expect", Forms.Either(Forms.Expectation, Forms.Map(Expect)), "what the value must be"),
        DefaultsBinder.DecisionKey,
        new("uncertainty", Forms.Quantity, "expanded uncertainty of the measurement, k = 2"),
    ];

    /// <summary>The key about the time a step takes.</summary>
    public static MapKey TakesKey { get; } = new("takes", Forms.Either(Forms.Expectation, Forms.Map(Takes)), "what the time needed must be");

    /// <summary>The same step with what is expected of the value it finds.</summary>
    public static Step ReadExpect(MapReader keys, Step step, BoundAction action, Scope scope)
    {
        if (!keys.Has("expect")) return ReadUncertainty(keys, step, null, scope);
        if (!action.FindsValue)
        {
            scope.Report.Add(SequenceCodes.NothingToExpect, keys.PlaceOf("expect"), "this step finds no value");
            return step;
        }

        var judged = new JudgedValue(NameOf(action, step), action.Value ?? ValueShape.Text(), action.IsInexact);
        var (expect, isRecordOnly) = Criterion(keys, "expect", Expect, "is", judged, new ExpectationNames(scope, action.Indexes, action.Index), scope);
        scope.Context.Places.Note(expect, keys.Find("expect")?.Place ?? keys.Place);
        return ReadUncertainty(keys, step with { Expect = expect, ExpectIsRecordOnly = isRecordOnly }, judged, scope);
    }

    /// <summary>The same step with what is expected of its time.</summary>
    public static Step ReadTakes(MapReader keys, Step step, BoundAction action, Scope scope)
    {
        if (!keys.Has("takes")) return step;
        var (takes, isRecordOnly) = Criterion(keys, "takes", Takes, "window", new JudgedValue("the time taken", ValueShape.Time), new ExpectationNames(scope, [], null), scope);
        scope.Context.Places.Note(takes, keys.Find("takes")?.Place ?? keys.Place);
        return step with { Takes = takes, TakesIsRecordOnly = isRecordOnly };
    }

    private static (Expectation? Expect, bool IsRecordOnly) Criterion(
        MapReader keys, string key, MapShape shape, string inner, JudgedValue judged, ExpectationNames names, Scope scope)
    {
        if (keys.Find(key) is not { } node) return (null, false);
        var isRecordOnly = false;
        if (node is YamlMap)
        {
            if (keys.Open(key, shape) is not { } map || map.Find(inner) is not { } written) return (null, false);
            isRecordOnly = map.YesNo("record-only") ?? false;
            node = written;
        }

        var expect = ExpectationParser.Parse(node, scope.Report) is { } syntax ? new ExpectationBinder(judged, names, scope.Report).Bind(syntax) : null;
        return (expect, isRecordOnly);
    }

    private static Step ReadUncertainty(MapReader keys, Step step, JudgedValue? judged, Scope scope)
    {
        var own = keys.Has("decision") ? DefaultsBinder.Decision(keys) : null;
        var uncertainty = Uncertainty(keys, step, judged, scope);
        if (own == Decision.Guarded && uncertainty is null && !keys.Has("uncertainty"))
        {
            scope.Report.Add(SequenceCodes.GuardedWithout, keys.PlaceOf("decision"), "a guarded decision needs the uncertainty of the measurement");
        }

        var decision = own ?? (uncertainty is null ? Decision.Simple : scope.Defaults.Decision);
        if (decision == Decision.Guarded && uncertainty is not null && step.Expect is not null) UncertaintyBinder.CheckGuard(keys.Find("uncertainty")!, uncertainty, step.Expect, scope.Report);
        return step with { Decision = decision, Uncertainty = uncertainty };
    }

    private static Operand.Constant? Uncertainty(MapReader keys, Step step, JudgedValue? judged, Scope scope)
    {
        if (keys.Find("uncertainty") is not { } node) return null;
        if (judged is { Shape.Kind: ValueKind.Number or ValueKind.Time }) return UncertaintyBinder.Bind(node, judged, scope.Report);
        scope.Report.Add(SequenceCodes.UncertaintyOfNoNumber, keys.PlaceOf("uncertainty"), $"'{step.Id}' judges no number");
        return null;
    }

    private static string NameOf(BoundAction action, Step step) => action.Action switch
    {
        StepAction.Read read => read.Channel.ToString(),
        StepAction.Sample sample => $"{sample.Reduce.ToString().ToLowerInvariant()} of {sample.Channel}",
        _ => $"the value of '{step.Id}'",
    };
}
