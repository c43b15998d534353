using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>An answer of the wrong kind must never end a prompt, least of all as a pass: every kind of prompt against every kind of answer.</summary>
public class AnswerKindTests
{
    private static readonly Answer[] Answers =
    [
        new Answer.Confirmed(), new Answer.Ok(), new Answer.NotOk("left"), new Answer.Text("steel"),
        new Answer.PassedOver("why"), new Answer.Stop("why"), new Answer.Again(), new Answer.GoOn(),
    ];

    private readonly Bench _bench = new();

    public static TheoryData<PromptKind, int> Pairs()
    {
        var pairs = new TheoryData<PromptKind, int>();
        foreach (var kind in Enum.GetValues<PromptKind>())
        {
            for (var answer = 0; answer < Answers.Length; answer++) pairs.Add(kind, answer);
        }

        return pairs;
    }

    [Theory, MemberData(nameof(Pairs))]
    public void A_prompt_ends_by_what_it_takes_and_stays_through_all_else(PromptKind kind, int which)
    {
        var answer = Answers[which];
        var address = Address(kind);
        if (kind == PromptKind.Decide) _bench.Operator.Answers("step", new Answer.NotOk(null));
        _bench.Operator.Answers(address, answer).Answers(address, new Answer.Stop("enough"));
        _bench.Run(StepWith(kind));

        var refused = _bench.Journal.Events.OfType<AnswerRefused>().ToList();
        if (kind.Takes(answer))
        {
            Assert.Empty(refused);
            return;
        }

        var refusal = Assert.Single(refused);
        Assert.Equal($"the prompt {kind.Wants()}", refusal.Reason);
        var asked = _bench.Journal.Events.OfType<Asked>().Single(one => one.Kind == kind);
        Assert.Equal(asked.Prompt, refusal.Prompt);
        Assert.Equal("enough", _bench.Journal.Events.OfType<Answered>().Single(one => one.Prompt == asked.Prompt).Detail);
        Assert.DoesNotContain(_bench.Judged, judged => judged.Counted == Verdict.Pass);
    }

    [Fact]
    public void An_ok_to_a_value_that_is_to_be_typed_is_no_pass()
    {
        _bench.Operator.Answers("step", new Answer.Ok());
        Assert.Equal(Verdict.Inconclusive, _bench.Run(StepWith(PromptKind.Enter)));
    }

    [Fact]
    public void A_prompt_that_only_gets_misfits_ends_without_an_answer()
    {
        for (var times = 0; times < 25; times++) _bench.Operator.Answers("step", new Answer.Ok(), afterSeconds: 0.1);
        Assert.Equal(Verdict.Inconclusive, _bench.Run(StepWith(PromptKind.Enter)));
        Assert.Equal(20, _bench.Journal.Events.OfType<AnswerRefused>().Count());
        Assert.Equal("20 answers did not fit", _bench.Judged.Single().Detail);
    }

    [Fact]
    public void A_caution_that_only_gets_misfits_is_not_acknowledged()
    {
        for (var times = 0; times < 25; times++) _bench.Operator.Answers("step!", new Answer.PassedOver("no time"), afterSeconds: 0.1);
        Assert.Equal(Verdict.Inconclusive, _bench.Run(StepWith(PromptKind.Caution)));
        Assert.Empty(_bench.Bus.Acts);
    }

    private Step StepWith(PromptKind kind)
    {
        _bench.Bus.With("pedal", _ => TruthValue.No);
        var text = LocalText.Plain("Do it");
        return kind switch
        {
            PromptKind.Act => Steps.AskUntil("step", True(Pedal)),
            PromptKind.Confirm => Steps.Confirm("step"),
            PromptKind.Judge => Steps.Judge("step"),
            PromptKind.Enter => Steps.Of("step", new StepAction.Enter(text, ValueShape.Text()), 20),
            PromptKind.Scan => Steps.Of("step", new StepAction.Scan(text), 20),
            PromptKind.Choose => Steps.Of("step", new StepAction.Choose(text, ["steel", "alloy"]), 20),
            PromptKind.Caution => Steps.Set("step", "horn", true) with { Caution = text },
            _ => Steps.Judge("step") with { OnFail = OnFail.Ask },
        };
    }

    private static string Address(PromptKind kind) => kind switch
    {
        PromptKind.Caution => "step!",
        PromptKind.Decide => "step?",
        _ => "step",
    };
}
