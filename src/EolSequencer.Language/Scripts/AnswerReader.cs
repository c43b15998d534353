using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.Scripts;

/// <summary>Reads one answer: a word, or a map of what is said and when.</summary>
internal sealed class AnswerReader(StepAddress address, TimeSpan usual, Report report)
{
    /// <summary>A time to an answer.</summary>
    public static ValueForm AfterForm { get; } = Forms.Duration(TimeSpan.Zero, TimeSpan.FromHours(1));

    private const string Nothing = "nothing";

    private static readonly string[] Said = ["answer", "not-ok", "type", "stop", "pass-over"];
    private static readonly string[] WithText = ["type", "stop", "pass-over"];
    private static readonly string[] Bare = ["ok", "not-ok", "confirm", "again", "go-on", Nothing];
    private static readonly MapShape Shape = new(
        "an answer",
        [],
        [
            new("answer", Forms.Word(Bare), "what is answered, in one word"),
            new("not-ok", Forms.Text, "not ok, and where"),
            new("type", Forms.Text, "what is typed, scanned or chosen"),
            new("stop", Forms.Text, "the run is stopped, for this reason"),
            new("pass-over", Forms.Text, "the step is passed over, for this reason"),
            new("after", AfterForm, "from the prompt to the answer"),
        ],
        Said);

    /// <summary>What an answer looks like: one, or one for each time it is asked.</summary>
    public static ValueForm Form { get; } = Forms.Either(OneForm(), Forms.List(OneForm(), 1));

    private static ValueForm OneForm() => Forms.Either(Forms.Word(Bare), Forms.Map(Shape));

    /// <summary>The answer; null: already reported.</summary>
    public ScriptedAnswer? Read(YamlNode node)
    {
        if (node is not YamlMap) return Word(node, "an answer") is { } bare && Fits(bare, node) ? new ScriptedAnswer(bare.Answer, usual) : null;
        if (MapReader.Open(node, Shape, report) is not { } keys || keys.ExactlyOne(Said, "thing that is said") is not { } said) return null;

        var found = said == "answer" ? keys.Find(said) is { } word ? Word(word, "'answer'") : null : Told(said, keys.Text(said)?.Text);
        var after = keys.Duration("after");
        if (found is null || !Fits(found, keys.Find(said)!)) return null;
        if (found.Answer is not null || !keys.Has("after")) return new ScriptedAnswer(found.Answer, after ?? usual);

        report.Add(ScriptCodes.TimeOfNothing, keys.PlaceOf("after"), "nothing is answered, so there is no time to it");
        return null;
    }

    /// <summary>What was read; without an answer: nothing is ever answered.</summary>
    private sealed record Meant(string Name, Answer? Answer);

    private Meant? Word(YamlNode node, string what)
    {
        if (node is YamlScalar text && WithText.Contains(text.Text))
        {
            report.Add(ScriptCodes.NoReason, text.Place, $"'{text.Text}' stands alone", $"write  {{ {text.Text}: … }}");
            return null;
        }

        return node.AsOneOf(what, Bare, report) switch
        {
            "ok" => new Meant("ok", new Answer.Ok()),
            "not-ok" => new Meant("not-ok", new Answer.NotOk(null)),
            "confirm" => new Meant("confirm", new Answer.Confirmed()),
            "again" => new Meant("again", new Answer.Again()),
            "go-on" => new Meant("go-on", new Answer.GoOn()),
            Nothing => new Meant(Nothing, null),
            _ => null,
        };
    }

    private static Meant? Told(string said, string? text) => text is null ? null : new Meant(said, said switch
    {
        "not-ok" => new Answer.NotOk(text),
        "type" => new Answer.Text(text),
        "stop" => new Answer.Stop(text),
        _ => new Answer.PassedOver(text),
    });

    private bool Fits(Meant meant, YamlNode at)
    {
        if (meant.Answer is null && address.Mark is { } kind)
        {
            var prompt = kind == PromptKind.Caution ? "a caution" : "the question after a step";
            report.Add(ScriptCodes.NeverEnds, at.Place, $"{prompt} stands until it is answered, and here it never is");
            return false;
        }

        if (meant.Answer is null || address.Takes(meant.Answer)) return true;
        report.Add(ScriptCodes.WrongPrompt, at.Place, $"'{meant.Name}' is no answer to {Addressed()}");
        return false;
    }

    private string Addressed() => address.Mark switch
    {
        PromptKind.Caution => $"the caution of '{address.Step}'",
        PromptKind.Decide => $"the question that follows '{address.Step}'",
        _ => $"what '{address.Step}' asks",
    };
}
