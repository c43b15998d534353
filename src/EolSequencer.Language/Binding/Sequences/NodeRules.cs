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
    public static string[] Keys { get; } = ["title", "when", "only-if", "require", "retry", "caution", "place"];

    private static readonly MapShape RequireShape = new("a requirement", ["that"], ["else"]);
    private static readonly MapShape RetryShape = new("a rule for retries", ["times"], ["on", "pause"]);
    private static readonly Words<bool> Else = new(("stop", true));
    private static readonly Words<Verdict> RetryOn = new(("fail", Verdict.Fail), ("inconclusive", Verdict.Inconclusive), ("error", Verdict.Error));
    private static readonly ImmutableArray<Verdict> RetryOnAny = [Verdict.Fail, Verdict.Inconclusive, Verdict.Error];

    private const string CautionNotNeeded = "not-needed";
    private const int MostRetries = 9;

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
        if (keys.Find("retry") is not YamlMap) return keys.Whole("retry", 1, MostRetries) is { } few ? new RetryRule((int)few, RetryOnAny, TimeSpan.Zero) : null;
        if (keys.Open("retry", RetryShape) is not { } inner) return null;
        var pause = inner.Duration("pause", TimeSpan.Zero, TimeSpan.FromHours(1)) ?? TimeSpan.Zero;
        ImmutableArray<Verdict> on = [.. inner.OneOrMore("on").Select(item => item.AsWord("an entry of 'on'", RetryOn, inner.Report)).OfType<Verdict>().Distinct()];
        return inner.Whole("times", 1, MostRetries) is { } times ? new RetryRule((int)times, on.IsEmpty ? RetryOnAny : on, pause) : null;
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
