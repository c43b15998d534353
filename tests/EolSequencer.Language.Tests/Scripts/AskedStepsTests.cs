using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Source;
using EolSequencer.Language.Tests.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Scripts;

/// <summary>A script that names a step of yesterday would silently leave everything to the simulated person.</summary>
public sealed class AskedStepsTests
{
    private static readonly LocalText Words = LocalText.Plain("text");

    private static readonly CheckedSequence Sequence = new()
    {
        Id = "startup",
        Title = Words,
        Revision = 1,
        VehicleType = null!,
        StationKind = "startup",
        Roles = [],
        Prepare = [Step("ready", new StepAction.Ask(Words, null, true))],
        Steps =
        [
            new Group
            {
                Id = "doors",
                Place = SourcePlace.None,
                Caution = Words,
                Each =
                [
                    new LoopName("door", [new LoopValue("front", null), new LoopValue("rear", null)]),
                    new LoopName("side", [new LoopValue("left", null), new LoopValue("right", null)]),
                ],
                Children =
                [
                    Step("seen", new StepAction.Judge(Words)) with { OnFail = OnFail.Ask },
                    Step("settle", new StepAction.Wait(new Operand.Constant(new NumberValue(1, UnitTable.Second)))),
                ],
                Always = [Step("code", new StepAction.Scan(Words))],
            },
            new Together
            {
                Id = "",
                Place = SourcePlace.None,
                Branches = [new Branch("left", [Step("gauge", new StepAction.Enter(Words, ValueShape.Text()))]), new Branch("right", [])],
            },
        ],
        Sources = [],
        CompiledHash = "",
    };

    [Fact]
    public void Every_address_of_a_prompt_is_known() => ExpectedDiagnostics.Hold(
        """
        operator-script: one
        answers:
          ready: confirm
          doors.seen: not-ok
          doors[front,left].seen: { not-ok: left }
          doors[rear,right].seen?: [again, go-on]
          doors!: confirm
          doors[rear,left].code: { type: x }
          gauge: { type: '80' }
        """,
        Check);

    [Fact]
    public void An_address_that_nobody_asks_is_a_warning() => ExpectedDiagnostics.Hold(
        """
        operator-script: one
        answers:
          doors.sen: ok
        # ^^^^^^^^^ expect warning SCR010
          doors[rear].seen: ok
        # ^ expect warning SCR010
          doors[rear,top].seen: ok
        # ^ expect warning SCR010
          doors.settle: nothing
        # ^ expect warning SCR010
          ready!: confirm
        # ^ expect warning SCR010
          ready?: again
        # ^ expect warning SCR010
          left.gauge: nothing
        # ^ expect warning SCR010
        """,
        Check);

    [Fact]
    public void An_answer_that_would_stop_the_run_is_a_warning() => ExpectedDiagnostics.Hold(
        """
        operator-script: one
        answers:
          ready: [confirm, ok]
        # ^^^^^ expect warning SCR011
          gauge: ok
        # ^ expect warning SCR011
          doors.seen: { type: ok }
        # ^ expect warning SCR011
          doors.code: nothing
        """,
        Check);

    [Fact]
    public void The_warning_names_the_nearest_step()
    {
        var report = new Report();
        Check(Texts.Source("operator-script: one\nanswers: { doors.sen: ok }\n"), report);

        Assert.Equal("test.yaml:2:12: warning SCR010: no sequence of the plant asks 'doors.sen' – did you mean 'doors.seen'?", Assert.Single(report.InOrder).ToString());
    }

    private static void Check(SourceText source, Report report)
    {
        if (YamlReader.Read(source, report) is { } root) ScriptBinder.Bind(root, report, AskedSteps.In([Sequence]));
    }

    private static Step Step(string id, StepAction action) => new() { Id = id, Place = SourcePlace.None, Action = action };
}
