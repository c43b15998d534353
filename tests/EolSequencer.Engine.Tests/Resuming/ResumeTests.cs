using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Resuming;

/// <summary>A run that broke off is gone on with where it was, and nothing that may hurt somebody is done again unasked.</summary>
public class ResumeTests
{
    private readonly Bench _bench = new();

    public ResumeTests() => _bench.Bus.With("voltage", _ => Volt(12.5m));

    private static Step Good(string id) => Steps.Read(id, Voltage, Steps.Volts(12m, 13m));

    private static Step Bad(string id) => Steps.Read(id, Voltage, Steps.Volts(1m, 2m));

    [Fact]
    public void It_goes_on_at_the_first_step_without_a_result()
    {
        var sequence = Bench.Sequence(Good("a"), Bad("b"), Good("c"), Good("d"));
        Assert.Equal(Verdict.Fail, GoOn(sequence, brokenBehind: "b"));

        Assert.Equal(["c", "d"], Again());
        Assert.Equal(new RollUp(0, 3, 0, 1, 0), _bench.Result!.RollUp);
        Assert.False(_bench.Result.Interrupted);
    }

    [Fact]
    public void Wherever_it_breaks_off_each_step_gets_one_result_and_the_run_one_end()
    {
        var sequence = Bench.Sequence(Good("a"), Steps.Group("g", Bad("x"), Steps.Wait("w", 1)), Steps.Together([Good("l")], [Good("r"), Good("s")]), Good("z")) with
        {
            Always = [Steps.Set("quiet", "horn", false)],
        };
        _bench.Run(sequence);
        var whole = _bench.Journal.Events.ToList();
        for (var cut = 1; cut < whole.Count; cut++)
        {
            _bench.GoOn(sequence, whole.Take(cut));
            var events = _bench.Journal.Events;

            Assert.Equal(Enumerable.Range(1, events.Count), events.Select(next => next.N));
            Assert.Equal(events.Select(next => next.At).Order(), events.Select(next => next.At));
            Assert.IsType<RunEnded>(Assert.Single(events, next => next is RunEnded or RunBegun && next.N > 1));
            Assert.Single(events, next => next is Resumed { For: ResumedFor.Steps });
            Assert.All(_bench.Judged.Where(judged => judged.Step != "quiet").GroupBy(judged => judged.Step), step => Assert.Single(step));
            Assert.Equal(((RunEnded)whole[^1]).RollUp, _bench.Result!.RollUp);
        }
    }

    [Fact]
    public void Prepare_runs_again_and_cautions_are_shown_again()
    {
        var careful = Steps.Group("g", Good("a"), Good("b")) with { Caution = LocalText.Plain("It moves.") };
        var sequence = Bench.Sequence(careful) with { Prepare = [Good("ready")] };
        _bench.Operator.Answers("g!", new Answer.Confirmed()).Answers("g!", new Answer.Confirmed());
        Assert.Equal(Verdict.Pass, GoOn(sequence, brokenBehind: "g.a"));

        Assert.Equal(["ready", "g.b"], Again());
        Assert.Equal([PromptKind.Caution, PromptKind.Caution], _bench.Operator.Prompts.Select(prompt => prompt.Kind));
        Assert.Equal([1, 2], _bench.Operator.Prompts.Select(prompt => prompt.Number));
    }

    [Fact]
    public void A_group_that_needs_continuity_begins_again_and_one_that_is_over_does_not()
    {
        var repeated = Steps.Group("r", Good("a"), Good("b"), Good("c")) with { RepeatOnResume = true };
        var sequence = Bench.Sequence(repeated, Good("z"));
        GoOn(sequence, brokenBehind: "r.b");
        Assert.Equal(["r.a", "r.b", "r.c", "z"], Again());

        GoOn(sequence, brokenBehind: "r.c");
        Assert.Equal(["z"], Again());
    }

    [Fact]
    public void A_step_to_be_tried_again_is_tried_again()
    {
        var sequence = Bench.Sequence(Bad("a") with { Retry = Steps.Retry(1) }, Good("z"));
        Assert.Equal(Verdict.Fail, GoOn(sequence, brokenBehind: "a"));
        Assert.Equal([2, 3], _bench.Judged.Where(judged => judged.Step == "a").Skip(1).Select(judged => judged.Attempt));
    }

    [Fact]
    public void A_step_that_stops_the_run_has_stopped_it()
    {
        var sequence = Bench.Sequence(Bad("a") with { OnFail = OnFail.Stop }, Good("z"));
        Assert.Equal(Verdict.Fail, GoOn(sequence, brokenBehind: "a"));
        Assert.Empty(Again());
        Assert.Equal(["z"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
    }

    [Fact]
    public void What_had_stopped_the_run_keeps_it_stopped()
    {
        var sequence = Bench.Sequence(Bad("a") with { OnFail = OnFail.Stop }, Good("z")) with { Always = [Steps.Set("quiet", "horn", false)] };
        _bench.Run(sequence);
        _bench.GoOn(sequence, _bench.Journal.Events.TakeWhile(next => next is not Judged { Step: "quiet" }));
        Assert.Equal(["quiet"], Again());
        Assert.Single(_bench.Journal.Events.OfType<Stopped>());
    }

    [Theory]
    [InlineData("again", Verdict.None)]
    [InlineData("go on", Verdict.Inconclusive)]
    public void An_action_that_had_begun_asks_before_it_acts_again(string answer, Verdict counted)
    {
        var sequence = Bench.Sequence(Good("a"), Steps.Set("act", "horn", true), Good("z"));
        _bench.Operator.Answers("act?", answer == "again" ? new Answer.Again() : new Answer.GoOn());
        _bench.Run(sequence);
        var begun = _bench.Journal.Events.FindIndex(next => next is Begun { Step: "act" });
        _bench.Bus.Acts.Clear();
        _bench.GoOn(sequence, _bench.Journal.Events.Take(begun + 1));

        Assert.Equal(answer == "again" ? ["horn=yes"] : [], _bench.Bus.Acts);
        Assert.Equal(counted, _bench.Judged.Single(judged => judged.Step == "act").Counted);
        Assert.Equal(PromptKind.Decide, Assert.Single(_bench.Operator.Prompts).Kind);
        Assert.Contains("z", Again());
    }

    [Fact]
    public void Results_are_what_they_were()
    {
        var seen = Steps.Group("g", Good("v"), Steps.Wait("pause", 1));
        _bench.Run(Bench.Sequence(seen));
        var past = _bench.Journal.Events.TakeWhile(next => next is not Judged { Step: "g.pause" }).ToList();
        _bench.Bus.With("voltage", _ => Volt(1m));
        _bench.GoOn(Bench.Sequence(seen), past);
        Assert.Equal(new RollUp(1, 1, 0, 0, 0), _bench.Result!.RollUp);
    }

    [Fact]
    public void The_vehicle_is_left_safe_first_and_the_run_has_not_ended()
    {
        var group = Steps.Group("g", Good("a"), Good("b")) with { Always = [Steps.Set("stop", "clear", true)] };
        var sequence = Bench.Sequence(group) with { Always = [Steps.Set("quiet", "horn", false)] };
        _bench.Run(sequence);
        var past = _bench.Journal.Events.TakeWhile(next => next is not Judged { Step: "g.b" }).ToList();
        _bench.Bus.Acts.Clear();
        _bench.LeaveSafe(sequence, past);

        Assert.Equal(["clear=yes", "horn=no"], _bench.Bus.Acts);
        Assert.DoesNotContain(_bench.Journal.Events, next => next is RunEnded);
        Assert.Equal(ResumedFor.Safety, _bench.Journal.Events.OfType<Resumed>().Single().For);

        _bench.Bus.Acts.Clear();
        Assert.Equal(Verdict.Pass, _bench.GoOn(sequence, [.. _bench.Journal.Events]));
        Assert.Equal(["g.b", "g.stop", "quiet"], Again());
        Assert.Equal(["clear=yes", "horn=no"], _bench.Bus.Acts);
    }

    [Fact]
    public void One_that_does_not_go_on_ends_as_interrupted_and_releases_nothing()
    {
        var sequence = Bench.Sequence(Good("a"), Good("b"));
        _bench.Run(sequence);
        var plan = EolSequencer.Engine.Planning.Planner.For(sequence, Bench.DemoOrder);
        foreach (var behind in new[] { "a", "b" })
        {
            var journal = new ListJournal(_bench.Journal.Events.TakeWhile(next => next is not Judged { Step: var step } || string.CompareOrdinal(step, behind) <= 0 && next is not RunEnded));
            journal.Events.RemoveAll(next => next is RunEnded);
            var result = EolSequencer.Engine.Running.SequenceRunner.End(plan, [.. journal.Events], journal, _bench.Time, "p1");

            Assert.True(result.Interrupted);
            Assert.False(result.RollUp.Releases);
            Assert.Equal(behind == "a" ? ["b"] : [], journal.Events.OfType<RunEnded>().Single().NotReached);
        }
    }

    /// <summary>The steps that ran behind the first point at which the run went on.</summary>
    private string[] Again() => [.. _bench.Journal.Events.SkipWhile(next => next is not Resumed { For: ResumedFor.Steps }).OfType<Judged>().Select(judged => judged.Step)];

    private Verdict GoOn(CheckedSequence sequence, string brokenBehind)
    {
        _bench.Journal = new ListJournal();
        _bench.Run(sequence);
        var last = _bench.Journal.Events.FindIndex(next => next is Judged judged && judged.Step == brokenBehind);
        return _bench.GoOn(sequence, _bench.Journal.Events.Take(last + 1));
    }
}
