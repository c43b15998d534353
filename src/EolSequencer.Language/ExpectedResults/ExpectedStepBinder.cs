using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>Reads what a test expects of one step: a word, or a map.</summary>
internal static class ExpectedStepBinder
{
    private const int MostAttempts = 10; // one, and nine further ones

    private static readonly Words<StepState> States = new([.. Enum.GetValues<StepState>().Where(state => state != StepState.LeftOut).Select(state => (state.Word(), state))]);
    private static readonly Words<MissingCause> Causes = new([.. Enum.GetValues<MissingCause>().Select(cause => (cause.Word(), cause))]);

    private static readonly MapShape Shape = new(
        "an expected step",
        [],
        [
            new("verdict", Forms.Word(States), "the verdict it counts with, or why it has none"),
            new("is", Forms.Expectation, "what its value must be"),
            new("took", Forms.Expectation, "from start to end of its last attempt"),
            new("started", Forms.Expectation, "when its last attempt started, counted from the beginning of the run"),
            new("attempts", Forms.Whole(1, MostAttempts), "how many attempts it took"),
            new("cause", Forms.Word(Causes), "why it has no value"),
        ]);

    /// <summary>What may stand behind the path of a step.</summary>
    public static ValueForm Form { get; } = Forms.Either(Forms.Word(States), Forms.Map(Shape));

    /// <summary>The expected step; null: already reported.</summary>
    public static ExpectedStep? Read(YamlScalar path, YamlNode node, KnownSteps steps, Report report)
    {
        if (steps.Find(path, report) is not { } found) return null;
        var step = new ExpectedStep(path.Text, path.Place, found.Ids, found.Index);
        if (node is not YamlMap) return node.AsWord($"what is expected of '{path.Text}'", States, report) is { } state ? step with { State = new(state, node.Place) } : null;
        if (MapReader.Open(node, Shape, report) is not { } keys) return null;
        if (keys.Map.Entries.Count == 0)
        {
            report.Add(ExpectedCodes.NothingExpected, node.Place, $"nothing is expected of '{path.Text}'");
            return null;
        }

        step = step with
        {
            State = Of(keys, "verdict", keys.Word("verdict", States)),
            Value = Value(keys, found, path.Text),
            Took = Time(keys, "took", $"the time that '{path.Text}' takes"),
            Started = Time(keys, "started", $"the start of '{path.Text}'"),
            Attempts = Of(keys, "attempts", (int?)keys.Whole("attempts")),
            Cause = Of(keys, "cause", keys.Word("cause", Causes)),
        };
        return CanBe(step, keys) ? step : null;
    }

    private static Stated<T>? Of<T>(MapReader keys, string key, T? value) where T : struct =>
        value is { } some ? new Stated<T>(some, keys.Find(key)!.Place) : null;

    private static ExpectedValue? Value(MapReader keys, KnownSteps.Found found, string path)
    {
        if (keys.Find("is") is not { } node) return null;
        if (FoundValue.Of(found.Step) is not { } value)
        {
            keys.Report.Add(ExpectedCodes.NothingFound, keys.PlaceOf("is"), $"'{path}' finds no value");
            return null;
        }

        var judged = new JudgedValue($"the value of '{path}'", value.Shape, value.IsInexact);
        return Bind(node, judged, keys.Report) is { } expectation ? new ExpectedValue(expectation, value.Shape.Kind, node.Place) : null;
    }

    private static Stated<Expectation>? Time(MapReader keys, string key, string what)
    {
        if (keys.Find(key) is not { } node) return null;
        return Bind(node, new JudgedValue(what, ValueShape.Time), keys.Report) is { } expectation ? new Stated<Expectation>(expectation, node.Place) : null;
    }

    private static Expectation? Bind(YamlNode node, JudgedValue judged, Report report) =>
        ExpectationParser.Parse(node, report) is { } syntax ? new ExpectationBinder(judged, new WrittenNames(report), report).Bind(syntax) : null;

    private static bool CanBe(ExpectedStep step, MapReader keys)
    {
        if (step is { State.Value: StepState.Pass, Cause: { } cause })
        {
            keys.Report.Add(ExpectedCodes.Contradiction, cause.Place, $"'{step.Path}' is to pass, so there is no cause why it has no value");
            return false;
        }

        if (step.State is not { } state || state.Value.HasRun()) return true;
        if (keys.Map.Entries.FirstOrDefault(entry => entry.Key.Text != "verdict") is not { } other) return true;
        keys.Report.Add(ExpectedCodes.DoesNotRun, other.Key.Place, $"'{step.Path}' is to be {state.Value.Word()}, so there is no '{other.Key.Text}' of it");
        return false;
    }
}
