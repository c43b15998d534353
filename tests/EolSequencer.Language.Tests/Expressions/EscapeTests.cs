using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>An expression reads and calculates. Whatever reaches for more is refused while loading, with its place.</summary>
public class EscapeTests
{
    [Theory]
    [MemberData(nameof(Attempts))]
    public void What_reaches_beyond_the_expression_is_refused(string text, string code)
    {
        var findings = Author.Compile(text).Report.InOrder;
        Assert.Contains(code, findings.Select(finding => finding.Code.Id));
        Assert.All(findings, finding => Assert.StartsWith("EXP", finding.Code.Id));
        Assert.All(findings, finding => Assert.True(LiesWithin(text, finding.Place), finding.ToString()));
    }

    public static TheoryData<string, string> Attempts() => [.. EscapeAttempts.All.Select(one => (one.Text, one.Code))];

    // A text of one line begins at column 9 of the document that holds it, in single quotes, which double inside.
    private static bool LiesWithin(string text, SourcePlace place)
    {
        if (text.Contains('\n', StringComparison.Ordinal)) return place.Line is >= 1 and <= 5;
        const int before = 9;
        return place.Line == 1 && place.Column >= before && place.EndColumn <= before + 1 + text.Replace("'", "''", StringComparison.Ordinal).Length;
    }

    [Theory]
    [InlineData("until: |\n  #if true\n  1\n  #endif\n")]
    [InlineData("until: |\n  1\n  #line 1 \"x\"\n")]
    [InlineData("until: |\n  1\n  #if false\n")]
    [InlineData("until: |\n  1 // remark\n  , true, null); }\n")]
    [InlineData("until: |\n  1 /*\n  */ ; System.Environment.Exit(3)\n")]
    public void Lines_of_a_block_do_not_reach_beyond_it_either(string document)
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var node = Texts.FirstScalar(document);
        batch.Add(node, 0, node.Text.Length, SmallPlant.Names, Wanted.Anything);

        Assert.False(batch.Compile());
        Assert.True(report.HasErrors);
    }

    [Fact]
    public void Remarks_are_harmless_even_when_they_do_not_end()
    {
        Assert.Equal("3", Author.Value("1 /* one */ + 2 // , true, null); }", new FixedScope()).ToString());

        var batch = new ExpressionBatch(new Report(), ExpressionCache.None);
        var made = new List<Expression>();
        foreach (var document in new[] { "until: |\n  1\n  /* open\n", "until: |\n  /* shut */ 2 // open\n", "until: 3\n" })
        {
            var node = Texts.FirstScalar(document);
            made.Add(batch.Add(node, 0, node.Text.Length, SmallPlant.Names, Wanted.Anything));
        }

        Assert.True(batch.Compile());
        Assert.Equal(["1", "2", "3"], made.Select(expression => expression.Evaluate(new FixedScope()).ToString()));
    }

    [Theory]
    [InlineData("note.GetType()", "GetType")]
    [InlineData("note.PadLeft(5)", "PadLeft")]
    [InlineData("note.Trim().ToUpper()", "ToUpper")]
    [InlineData("bus.stored_codes[0]", "[0]")]
    public void A_member_that_is_not_on_the_list_is_named(string text, string pointed)
    {
        var fault = Author.Fault(text);
        Assert.Contains(fault.Code, new[] { ExpressionCodes.NotAllowed, ExpressionCodes.IndexNotPossible });
        Assert.Equal(pointed, Author.Pointed(text, fault));
    }
}
