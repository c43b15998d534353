using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what steps and groups have in common.</summary>
internal static class NodeRules
{
    /// <summary>The keys it reads.</summary>
    public static MapKey[] Keys => [TitleKey, WhenKey, OnlyIfKey, .. Others];

    /// <summary>What people call something.</summary>
    public static MapKey TitleKey { get; } = new("title", Forms.Texts, "what people call it");

    /// <summary>The condition that is decided before the run.</summary>
    public static MapKey WhenKey { get; } = new("when", Forms.Expression, "does it apply to this vehicle? Decided once before the first step, from vehicle, order, parameters and loop names");

    /// <summary>The condition that is decided at its turn.</summary>
    public static MapKey OnlyIfKey { get; } = new("only-if", Forms.Expression, "is it needed now? Decided at its turn, from readings and results too");

    private static readonly Words<bool> Else = new(("stop", true));
    private static readonly Words<Verdict> RetryOn = new(("fail", Verdict.Fail), ("inconclusive", Verdict.Inconclusive), ("error", Verdict.Error));
    private static readonly ImmutableArray<Verdict> RetryOnAny = [Verdict.Fail, Verdict.Inconclusive, Verdict.Error];

    private const string CautionNotNeeded = "not-needed";

    private static readonly ValueForm Retries = Forms.Whole(1, 9);

    private static readonly MapShape RequireShape = new(
        "a requirement",
        [new("that", Forms.Expression, "what must hold all the time")],
        [new("else", Forms.Word(Else), "stop: the run ends as well")]);

    private static readonly MapShape RetryShape = new(
        "a rule for retries",
        [new("times", Retries, "further attempts")],
        [
            new("on", Forms.OneOrMore(Forms.Word(RetryOn)), "verdicts after which another attempt is made; all three if nothing is said"),
            new("pause", Forms.Duration(TimeSpan.Zero, TimeSpan.FromHours(1)), "time before the next attempt"),
        ]);

    private static readonly MapKey[] Others =
    [
        new("require", Forms.Either(Forms.Expression, Forms.Map(RequireShape)), "must hold all the time; false ends the step as inconclusive"),
        new("retry", Forms.Either(Retries, Forms.Map(RetryShape)), "further attempts after fail, inconclusive or error"),
        new("caution", Forms.Texts, "what the operator reads and acknowledges before it begins; not-needed says on purpose that there is none"),
        new("place", Forms.Named(Subject.Place), "where the operator stands, a place of the plant"),
        new("depends-on", Forms.OneOrMore(Forms.Text), "groups or steps before it that put the vehicle into the state it needs; a retest repeats them together"),
    ];

    /// <summary>The same node with its title, conditions, retries, caution and place.</summary>
    /// <param name="scope">The place in front of the node.</param>
    public static T Read<T>(MapReader keys, T node, Scope scope) where T : Node => node with
    {
        Title = PromptTexts.Read(keys, "title", scope) ?? node.Title,
        When = Conditions.Add(keys, "when", scope.Static, scope.Context.Batch),
        OnlyIf = Conditions.Add(keys, "only-if", scope.Names, scope.Context.Batch),
        Require = Require(keys, scope),
        Retry = Retry(keys),
        Caution = Caution(keys, scope),
        OperatorPlace = Place(keys, scope),
        DependsOn = [.. keys.OneOrMore("depends-on").Select(item => item.AsText("a group or step that it depends on", keys.Report)).OfType<YamlScalar>().Select(name => new Dependency(name.Text, name.Place))],
    };

    /// <summary>True when the node says what is dangerous, or that nothing is.</summary>
    public static bool SaysCaution(MapReader keys) => keys.Has("caution");

    private static Requirement? Require(MapReader keys, Scope scope)
    {
        if (keys.Find("require") is not YamlMap) return Conditions.Add(keys, "require", scope.Names, scope.Context.Batch) is { } that ? new Requirement(that, false) : null;
        if (keys.Open("require", RequireShape) is not { } inner) return null;
        var elseStop = inner.Word("else", Else) ?? false;
        return Conditions.Add(inner, "that", scope.Names, scope.Context.Batch) is { } condition ? new Requirement(condition, elseStop) : null;
    }

    private static RetryRule? Retry(MapReader keys)
    {
        if (keys.Find("retry") is not YamlMap) return keys.Whole("retry") is { } few ? new RetryRule((int)few, RetryOnAny, TimeSpan.Zero) : null;
        if (keys.Open("retry", RetryShape) is not { } inner) return null;
        var pause = inner.Duration("pause") ?? TimeSpan.Zero;
        ImmutableArray<Verdict> on = [.. inner.OneOrMore("on").Select(item => item.AsWord("an entry of 'on'", RetryOn, inner.Report)).OfType<Verdict>().Distinct()];
        return inner.Whole("times") is { } times ? new RetryRule((int)times, on.IsEmpty ? RetryOnAny : on, pause) : null;
    }

    private static LocalText? Caution(MapReader keys, Scope scope) =>
        keys.Find("caution") is YamlScalar { Text: CautionNotNeeded } ? null : PromptTexts.Read(keys, "caution", scope);

    private static string? Place(MapReader keys, Scope scope)
    {
        if (keys.Text("place") is not { } place) return null;
        if (scope.Context.Plant.Places.Any(known => known.Id == place.Text)) return place.Text;

        var near = Nearest.Of(place.Text, scope.Context.Plant.Places.Select(known => known.Id));
        scope.Report.Add(SequenceCodes.UnknownPlace, place.Place, $"the plant has no place {Shown.Quoted(place.Text)}", near is null ? null : $"did you mean '{near}'?");
        return null;
    }
}
