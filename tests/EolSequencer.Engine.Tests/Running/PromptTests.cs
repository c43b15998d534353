using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>An operator's answer counts once, for its own prompt, and silence is never a pass.</summary>
public class PromptTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void Confirmed_judges_nothing_and_ok_passes()
    {
        _bench.Operator.Answers("ready", new Answer.Confirmed()).Answers("seen", new Answer.Ok());
        _bench.Run(Steps.Confirm("ready"), Steps.Judge("seen"));
        Assert.Equal([Verdict.None, Verdict.Pass], _bench.Judged.Select(j => j.Counted));
    }

    [Fact]
    public void Not_ok_fails_and_keeps_where()
    {
        _bench.Operator.Answers("seen", new Answer.NotOk("left"));
        Assert.Equal(Verdict.Fail, _bench.Run(Steps.Judge("seen")));
        Assert.Equal("left", _bench.Judged.Single().Detail);
    }

    [Fact]
    public void No_answer_within_the_limit_is_inconclusive()
    {
        Assert.Equal(Verdict.Inconclusive, _bench.Run(Steps.Judge("seen", within: 3)));
        Assert.Equal(3_000_000, _bench.Judged.Single().Took);
    }

    [Fact]
    public void A_typed_value_that_is_no_number_is_refused_and_the_prompt_stays()
    {
        _bench.Operator.Answers("paint", new Answer.Text("1,5")).Answers("paint", new Answer.Text("112"));
        var um = UnitTable.Required("µm");
        var step = Steps.Of("paint", new StepAction.Enter(LocalText.Plain("Paint"), ValueShape.Number(um)), 60) with { Expect = Steps.Window(90, 150, "µm") };
        Assert.Equal(Verdict.Pass, _bench.Run(step));
        Assert.Equal("1,5", _bench.Journal.Events.OfType<AnswerRefused>().Single().Answer);
        Assert.Equal([1, 1], _bench.Operator.Prompts.Select(p => p.Number));
        Assert.Equal([null, "a number with a point and no thousands mark is wanted"], _bench.Operator.Prompts.Select(p => p.Refused));
        Assert.Equal("112", _bench.Journal.Events.OfType<Answered>().Single().Answer);
    }

    [Fact]
    public void A_word_that_was_not_offered_is_refused()
    {
        _bench.Operator.Answers("rims", new Answer.Text("gold")).Answers("rims", new Answer.Text("alloy"));
        var step = Steps.Of("rims", new StepAction.Choose(LocalText.Plain("Rims"), ["steel", "alloy"]), 60) with
        {
            Expect = new Expectation.EqualTo(new Operand.Constant(new TextValue("steel"))),
        };
        Assert.Equal(Verdict.Fail, _bench.Run(step));
        Assert.Single(_bench.Journal.Events.OfType<AnswerRefused>());
    }

    [Fact]
    public void A_caution_is_acknowledged_before_the_clock_of_the_step_starts()
    {
        _bench.Operator.Answers("horn!", new Answer.Confirmed(), afterSeconds: 30);
        _bench.Run(Steps.Set("horn", "horn", true) with { Caution = LocalText.Plain("The horn sounds.") });
        Assert.Equal(["horn=yes"], _bench.Bus.Acts);
        Assert.Equal(30_000_000, _bench.Judged.Single().Start);
    }

    [Fact]
    public void A_stop_at_a_caution_leaves_the_step_unreached()
    {
        _bench.Operator.Answers("horn!", new Answer.Stop("somebody is in front"));
        Assert.Equal(Verdict.Inconclusive, _bench.Run(Steps.Set("horn", "horn", true) with { Caution = LocalText.Plain("The horn sounds.") }));
        Assert.Empty(_bench.Bus.Acts);
        Assert.Equal(["horn"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
    }

    [Fact]
    public void Words_and_loop_values_fill_the_text()
    {
        var text = new LocalText([new("en", "Lower the {side} window."), new("es", "Baje la ventana {side}.")]);
        var group = Steps.Group("window", Steps.Of("down", new StepAction.Ask(text, null, true), 10)) with
        {
            Each = [new LoopName("side", [new LoopValue("left", null)])],
            Words = [new Words("side", "left", new LocalText([new("en", "left"), new("es", "izquierda")]))],
        };
        _bench.Operator.Answers("window[left].down", new Answer.Confirmed());
        _bench.Run(group);
        Assert.Equal("Baje la ventana izquierda.", _bench.Operator.Prompts.Single().TextFor("es"));
        Assert.Equal("window.down", _bench.Operator.Prompts.Single().StepPattern);
    }
}
