using System.Collections.Immutable;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds one step: its action, what is expected, its time and what follows.</summary>
internal static class StepBinder
{
    private static readonly Words<bool> IfMissing = new(("error", false), ("fail", true));

    /// <summary>The key that says whose fault a missing reading is.</summary>
    public static MapKey IfMissingKey { get; } = new("if-missing", Forms.Word(IfMissing), "fail: a missing reading speaks of the vehicle");

    /// <summary>The step; null: already reported.</summary>
    public static BoundNode? Bind(YamlMap map, Scope scope)
    {
        if (ActionOf(map, scope.Report) is not { } word || MapReader.Open(map, StepShapes.Of(word), scope.Report) is not { } keys) return null;
        var id = keys.Find("step") is { } idNode ? Ids.Name(idNode, "a step", scope.Report) : null;
        if (Action(word, keys, scope) is not { } action || id is null) return null;

        scope.Context.Places.Note(action.Action, action.Place);
        var step = NodeRules.Read(keys, new Step { Id = id, Place = keys.Find("step")!.Place, Action = action.Action }, scope);
        step = StepTiming.Read(keys, Common(keys, step, word, scope), action, scope);
        if (StepShapes.Of(word).Knows("expect")) step = StepJudging.ReadExpect(keys, step, action, scope);
        if (StepShapes.Of(word).Knows("record")) step = step with { Serial = SerialBinder.Read(keys, step, action, scope.Report) };
        return new BoundNode(step, Judged(step, action, scope));
    }

    /// <summary>The results behind the step.</summary>
    private static ResultScope Judged(Step step, BoundAction action, Scope scope)
    {
        var mayBeMissing = step.OnlyIf is not null;
        return action is { Computed: { } expression }
            ? scope.Results.Add(step.Id, expression, mayBeMissing)
            : scope.Results.Add(step.Id, action.Value, action.Indexes, mayBeMissing);
    }

    private static string? ActionOf(YamlMap map, Report report)
    {
        var present = StepShapes.Actions.Where(word => map.Find(word) is not null).ToList();
        if (present is [var only]) return only;
        return MapReader.Open(map, StepShapes.Any, report)?.ExactlyOne(StepShapes.Actions, "action");
    }

    private static BoundAction? Action(string word, MapReader keys, Scope scope) => word switch
    {
        "ask" => PromptActions.Ask(keys, scope),
        "judge" => PromptActions.Judge(keys, scope),
        "enter" => PromptActions.Enter(keys, scope),
        "scan" => PromptActions.Scan(keys, scope),
        "choose" => PromptActions.Choose(keys, scope),
        "read" => DeviceReads.Read(keys, scope),
        "sample" => DeviceReads.Sample(keys, scope),
        "await" => DeviceReads.Await(keys, scope),
        "wait" => TimedActions.Wait(keys, scope),
        "set" => DeviceActs.Set(keys, scope),
        "do" => DeviceActs.Do(keys, scope),
        _ => TimedActions.Compute(keys, scope),
    };

    private static Step Common(MapReader keys, Step step, string word, Scope scope)
    {
        var shape = StepShapes.Of(word);
        return step with
        {
            Class = shape.Knows("class") ? DefaultsBinder.Class(keys) ?? scope.Defaults.Class : scope.Defaults.Class,
            OnFail = shape.Knows("on-fail") ? DefaultsBinder.OnFail(keys) ?? scope.Defaults.OnFail : OnFail.Continue,
            RecordOnly = shape.Knows("record-only") && (keys.YesNo("record-only") ?? false),
            MissingFails = shape.Knows("if-missing") && (keys.Word("if-missing", IfMissing) ?? false),
            Show = shape.Knows("show") ? PromptTexts.Read(keys, "show", scope) : null,
            Picture = shape.Knows("picture") ? PictureFile.Read(keys, scope) : null,
            Planned = shape.Knows("planned") ? keys.Duration("planned") : null,
            Requirements = shape.Knows("requirement") ? Requirements(keys) : [],
            Repair = shape.Knows("repair") ? PromptTexts.Read(keys, "repair", scope) : null,
            Nonconformity = shape.Knows("nonconformity") ? NonconformityBinder.Read(keys, scope) : null,
        };
    }

    private static ImmutableArray<string> Requirements(MapReader keys) =>
        [.. keys.OneOrMore("requirement").Select(item => item.AsText("a requirement", keys.Report)?.Text).OfType<string>().Distinct(StringComparer.Ordinal)];
}
