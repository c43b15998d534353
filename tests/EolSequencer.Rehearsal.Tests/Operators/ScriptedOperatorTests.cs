using System.Collections.Immutable;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Texts;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Rehearsal.Tests.Operators;

/// <summary>A run by script proves something only when each answer comes exactly once, at its time, to its own prompt.</summary>
public sealed class ScriptedOperatorTests
{
    private readonly VirtualTime _time = new(new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero));
    private readonly RecordingOperator _inner = new();
    private ImmutableSortedDictionary<string, ImmutableArray<ScriptedAnswer>> _answers = ImmutableSortedDictionary.Create<string, ImmutableArray<ScriptedAnswer>>(StringComparer.Ordinal);

    [Fact]
    public void A_named_prompt_is_answered_after_its_time()
    {
        Says("lamps.seen", (new Answer.NotOk("left"), 3));

        Assert.Equal(new Answer.NotOk("left"), Ask(Scripted(), Prompt("lamps.seen", PromptKind.Judge)));
        Assert.Equal(TimeSpan.FromSeconds(3), _time.Now);
        Assert.Empty(_inner.Asked);
    }

    [Fact]
    public void A_prompt_that_is_not_named_goes_to_the_person()
    {
        Says("lamps.seen", (new Answer.Ok(), 3));

        Assert.Equal(new Answer.Confirmed(), Ask(Scripted(), Prompt("lamps.press", PromptKind.Act)));
        Assert.Equal(TimeSpan.Zero, _time.Now);
        Assert.Equal(["lamps.press"], _inner.Asked);
    }

    [Fact]
    public void The_full_id_goes_before_the_id_without_loop_values()
    {
        Says("doors.shut", (new Answer.Ok(), 1));
        Says("doors[rear].shut", (new Answer.NotOk(null), 1));
        var scripted = Scripted();

        Assert.Equal(new Answer.Ok(), Ask(scripted, Prompt("doors[front].shut", PromptKind.Judge)));
        Assert.Equal(new Answer.NotOk(null), Ask(scripted, Prompt("doors[rear].shut", PromptKind.Judge)));
    }

    [Fact]
    public void Answers_follow_one_another_for_each_step_by_itself_and_the_last_repeats()
    {
        Says("doors.shut", (new Answer.NotOk("top"), 1), (new Answer.Ok(), 2));
        var scripted = Scripted();

        var given = new[] { "doors[a].shut", "doors[b].shut", "doors[a].shut", "doors[a].shut", "doors[b].shut" }
            .Select(step => Ask(scripted, Prompt(step, PromptKind.Judge)));

        Assert.Equal([new Answer.NotOk("top"), new Answer.NotOk("top"), new Answer.Ok(), new Answer.Ok(), new Answer.Ok()], given);
    }

    [Theory]
    [InlineData(PromptKind.Caution, "horn!")]
    [InlineData(PromptKind.Decide, "horn?")]
    public void A_caution_and_a_decision_are_answered_only_by_their_own_address(PromptKind kind, string address)
    {
        Says("horn", (new Answer.Stop("smoke"), 1));
        Ask(Scripted(), Prompt("horn", kind));
        Assert.Equal([address], _inner.Asked);

        Says(address, (new Answer.Stop("smoke"), 1));
        Assert.Equal(new Answer.Stop("smoke"), Ask(Scripted(), Prompt("horn", kind)));
        Assert.Single(_inner.Asked);
    }

    [Fact]
    public void Nothing_is_answered_until_the_prompt_is_withdrawn()
    {
        Says("doors.open", (null, 2));

        Assert.Throws<TaskCanceledException>(() => Ask(Scripted(), Prompt("doors.open", PromptKind.Act), withdrawAfter: 60));
        Assert.Equal(TimeSpan.FromSeconds(60), _time.Now);
        Assert.Empty(_inner.Asked);
    }

    [Fact]
    public void A_withdrawn_prompt_gets_no_late_answer_and_the_next_one_its_own()
    {
        Says("seen", (new Answer.Ok(), 30), (new Answer.NotOk("late"), 5));
        var scripted = Scripted();

        Assert.ThrowsAny<OperationCanceledException>(() => Ask(scripted, Prompt("seen", PromptKind.Judge), withdrawAfter: 20));
        Assert.Equal(TimeSpan.FromSeconds(20), _time.Now);
        Assert.Equal(new Answer.NotOk("late"), Ask(scripted, Prompt("seen", PromptKind.Judge)));
        Assert.Equal(TimeSpan.FromSeconds(25), _time.Now);
    }

    [Fact]
    public void Prompts_of_one_screen_are_answered_side_by_side()
    {
        Says("a", (new Answer.Ok(), 5));
        Says("b", (new Answer.Ok(), 3));
        var scripted = Scripted();

        _time.Run(() => Task.WhenAll(
            scripted.AskAsync(Prompt("a", PromptKind.Judge), default), scripted.AskAsync(Prompt("b", PromptKind.Judge), default)));
        Assert.Equal(TimeSpan.FromSeconds(5), _time.Now);
    }

    [Theory]
    [InlineData(PromptKind.Act)]
    [InlineData(PromptKind.Confirm)]
    [InlineData(PromptKind.Enter)]
    [InlineData(PromptKind.Scan)]
    [InlineData(PromptKind.Choose)]
    public void An_answer_that_does_not_fit_stops_the_run_and_names_script_and_step(PromptKind kind)
    {
        Says("gauge", (new Answer.Ok(), 1));

        var stop = Assert.IsType<Answer.Stop>(Ask(Scripted(), Prompt("gauge", kind)));
        Assert.StartsWith("the operator script 'late_hand' does not fit: 'gauge' ", stop.Reason);
    }

    [Fact]
    public void Notices_are_shown_by_the_person_s_screen()
    {
        using (Scripted().Show(new Notice("sink", LocalText.Plain("Keep the pedal pressed."), _ => null))) Assert.Equal(["sink"], _inner.Shown);
        Assert.Empty(_inner.Shown);
    }

    private void Says(string address, params (Answer? Answer, double After)[] answers) =>
        _answers = _answers.SetItem(address, [.. answers.Select(one => new ScriptedAnswer(one.Answer, TimeSpan.FromSeconds(one.After)))]);

    private ScriptedOperator Scripted() => new(new OperatorScript("late_hand", _answers), _inner, _time);

    private Answer Ask(ScriptedOperator scripted, Prompt prompt, double? withdrawAfter = null)
    {
        using var withdrawn = new CancellationTokenSource();
        if (withdrawAfter is { } seconds) _time.At(_time.Now + TimeSpan.FromSeconds(seconds), withdrawn.Cancel);
        return _time.Run(() => scripted.AskAsync(prompt, withdrawn.Token));
    }

    private static Prompt Prompt(string step, PromptKind kind) => new()
    {
        Number = 1,
        Step = step,
        StepPattern = System.Text.RegularExpressions.Regex.Replace(step, @"\[[^]]*\]", ""),
        Attempt = 1,
        Kind = kind,
        Text = LocalText.Plain(step),
        Words = (_, _) => null,
        ValueOf = _ => null,
    };
}
