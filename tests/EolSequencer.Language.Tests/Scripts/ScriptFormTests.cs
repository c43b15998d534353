using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Scripts;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.Tests.Scripts;

/// <summary>A script is written by hand in a hurry, so each form must mean exactly what it looks like.</summary>
public sealed class ScriptFormTests
{
    [Fact]
    public void Each_answer_is_what_its_author_wrote()
    {
        var script = Bound("""
            operator-script: late_hand
            after: 1500 ms
            answers:
              lamps.seen: { not-ok: left, after: 3 s }
              doors[rear].ajar: nothing
              rims: { type: alloy }
              paint: [ { type: '80' }, { type: 120, after: 0 s } ]
              roller_ready: { pass-over: gate is out of order }
              horn: { stop: "smoke, somewhere" }
              horn!: { answer: confirm, after: 1 min }
              horn?: [ again, go-on ]
              glass.clean: ok
              glass.whole: not-ok
              belts: confirm
            """);

        Assert.Equal("late_hand", script.Id);
        Holds("lamps.seen", (new Answer.NotOk("left"), 3));
        Holds("doors[rear].ajar", (null, 1.5));
        Holds("rims", (new Answer.Text("alloy"), 1.5));
        Holds("paint", (new Answer.Text("80"), 1.5), (new Answer.Text("120"), 0));
        Holds("roller_ready", (new Answer.PassedOver("gate is out of order"), 1.5));
        Holds("horn", (new Answer.Stop("smoke, somewhere"), 1.5));
        Holds("horn!", (new Answer.Confirmed(), 60));
        Holds("horn?", (new Answer.Again(), 1.5), (new Answer.GoOn(), 1.5));
        Holds("glass.clean", (new Answer.Ok(), 1.5));
        Holds("glass.whole", (new Answer.NotOk(null), 1.5));
        Holds("belts", (new Answer.Confirmed(), 1.5));
        Assert.Equal(11, script.Answers.Count);

        void Holds(string address, params (Answer? Answer, double After)[] expected) => Assert.Equal(
            expected.Select(one => new ScriptedAnswer(one.Answer, TimeSpan.FromSeconds(one.After))), script.Answers[address]);
    }

    [Fact]
    public void Without_after_an_answer_takes_two_seconds() =>
        Assert.Equal(TimeSpan.FromSeconds(2), Bound("operator-script: quick\nanswers: { seen: ok }\n").Answers["seen"][0].After);

    [Theory]
    [InlineData("doors[rear].ajar")]
    [InlineData("control_units[brakes].part[front-left,2].read")]
    [InlineData("a.b.c")]
    public void An_id_with_brackets_needs_no_quotes_at_the_beginning_of_a_line(string id) =>
        Assert.Equal(id, Assert.Single(Bound($"operator-script: one\nanswers:\n  {id}: ok\n").Answers).Key);

    [Fact]
    public void Inside_braces_an_id_with_brackets_is_quoted()
    {
        Assert.Equal("doors[rear].ajar", Assert.Single(Bound("operator-script: one\nanswers: { 'doors[rear].ajar': ok }\n").Answers).Key);
        Assert.True(Texts.Read("operator-script: one\nanswers: { doors[rear].ajar: ok }\n").Report.HasErrors);
    }

    [Fact]
    public void A_file_is_loaded_from_anywhere()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".yaml");
        File.WriteAllText(path, "operator-script: one\nanswers: { seen: ok }\n");
        try
        {
            var result = ScriptLoader.Load(path);

            Assert.Empty(result.Diagnostics);
            Assert.Equal("one", result.Script!.Id);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_missing_file_is_a_finding()
    {
        var result = ScriptLoader.Load("nowhere.yaml");

        Assert.Null(result.Script);
        Assert.Equal(FileCodes.Missing, Assert.Single(result.Diagnostics).Code);
    }

    private static OperatorScript Bound(string text)
    {
        var report = new Report();
        var script = ScriptBinder.Bind(Texts.ReadWell(text), report);
        Assert.Empty(report.InOrder);
        return script!;
    }
}
