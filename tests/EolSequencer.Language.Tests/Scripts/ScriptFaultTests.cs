using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Source;
using EolSequencer.Language.Tests.Diagnostics;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Scripts;

/// <summary>A slip in a script must not turn into a run that tests something else: each is named at its place.</summary>
public sealed class ScriptFaultTests
{
    [Theory]
    [InlineData("""
        operator-script: 2nd
        #                ^^^ expect error NAM001
        answers: {}
        """)]
    [InlineData("""
        operator-script: one
        # expect error SYN002
        afer: 2 s
        # expect error SYN001
        """)]
    [InlineData("""
        operator-script: one
        after: 2
        #      ^ expect error SYN017
        answers:
          seen: okay
        #       ^^^^ expect error SYN018
          parked: yes
        #         ^^^ expect error SYN018
          flat: { ok: yes }
        #         ^^ expect error SYN001
        #         ^ expect error SYN004
          sides: { type: a, not-ok: left }
        #                   ^^^^^^ expect error SYN004
          late: { answer: ok, after: 61 min }
        #                            ^^^^^^ expect error SYN013
          none: []
        #       ^^ expect error SCR006
          deep: [ok, [ok]]
        #            ^^^^ expect error SYN003
        """)]
    [InlineData("""
        operator-script: one
        answers:
          doors[rear: ok
        # ^^^^^^^^^^ expect error SCR001
          doors.: ok
        # ^^^^^^ expect error SCR001
          "!": confirm
        # ^^^ expect error SCR001
          doors[a, b].ajar: ok
        # ^^^^^^^^^^^^^^^^ expect error SCR001
          1st: ok
        # ^^^ expect error SCR001
        """)]
    [InlineData("""
        operator-script: one
        answers:
          horn: stop
        #       ^^^^ expect error SCR002
          rims: { answer: type }
        #                 ^^^^ expect error SCR002
          gate: [ok, pass-over]
        #            ^^^^^^^^^ expect error SCR002
        """)]
    [InlineData("""
        operator-script: one
        answers:
          seen: again
        #       ^^^^^ expect error SCR003
          seen?: ok
        #        ^^ expect error SCR003
          seen!: { pass-over: "no, thanks" }
        #                     ^ expect error SCR003
          horn!: nothing
        #        ^^^^^^^ expect error SCR004
          horn?: [again, nothing]
        #                ^^^^^^^ expect error SCR004
          tail: { answer: nothing, after: 3 s }
        #                          ^^^^^ expect error SCR005
        """)]
    public void Each_slip_is_named_where_it_stands(string document) => ExpectedDiagnostics.Hold(document, Check);

    [Theory]
    [InlineData("  seen: noting\n", "'noting'", "did you mean 'nothing'?")]
    [InlineData("  seen: { tipe: a }\n", "'tipe'", "did you mean 'type'?")]
    [InlineData("  horn: stop\n", "'stop' stands alone", "write  { stop: … }")]
    [InlineData("  seen: again\n", "'again' is no answer to what 'seen' asks", "( STEP? )")]
    [InlineData("  horn!: nothing\n", "a caution stands until it is answered", "answer it")]
    public void The_message_says_what_to_write(string answer, string found, string hint)
    {
        var report = new Report();
        Check(Texts.Source("operator-script: one\nanswers:\n" + answer), report);

        var finding = report.InOrder[0];
        Assert.Contains(found, finding.Found);
        Assert.Contains(hint, finding.Hint);
    }

    [Theory]
    [InlineData("sequence: startup\nsteps: []\n", "PLT004", "this is a sequence, an operator script is wanted")]
    [InlineData("operator-scrip: one\nanswers: {}\n", "PLT003", "'operator-scrip' is no kind of file")]
    [InlineData("after: 2 s\noperator-script: one\nanswers: {}\n", "PLT003", "'after' is no kind of file")]
    [InlineData("- operator-script\n", "PLT003", "the file begins with no key")]
    public void A_file_of_another_kind_is_told_once(string text, string code, string found)
    {
        var report = new Report();
        Assert.False(PlantFiles.IsOf(Texts.ReadWell(text), FileKind.OperatorScript, report));

        var finding = Assert.Single(report.InOrder);
        Assert.Equal(code, finding.Code.Id);
        Assert.Equal(found, finding.Found);
    }

    [Fact]
    public void A_faulty_script_is_not_handed_on()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".yaml");
        File.WriteAllText(path, "operator-script: one\nanswers: { seen: okay, lit: ok }\n");
        try
        {
            Assert.Null(ScriptLoader.Load(path).Script);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void Check(SourceText source, Report report)
    {
        if (YamlReader.Read(source, report) is { } root) ScriptBinder.Bind(root, report);
    }
}
