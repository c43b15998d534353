using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>An expression reads and calculates. Whatever reaches for more is refused while loading, with its place.</summary>
public class EscapeTests
{
    [Theory]
    [InlineData("System.IO.File.Exists(\"/etc/passwd\")")]
    [InlineData("File.ReadAllText(\"x\")")]
    [InlineData("global::System.IO.File.Exists(\"x\")")]
    [InlineData("new System.Net.Http.HttpClient().GetStringAsync(\"http://192.0.2.1\").Result")]
    [InlineData("System.Diagnostics.Process.Start(\"sh\")")]
    [InlineData("System.Environment.Exit(3)")]
    [InlineData("Environment.GetEnvironmentVariable(\"HOME\")")]
    [InlineData("System.Threading.Thread.Sleep(1000)")]
    [InlineData("System.Threading.Tasks.Task.Delay(1000)")]
    [InlineData("System.DateTime.Now.Year > 2000")]
    [InlineData("System.Reflection.Assembly.Load(\"x\")")]
    [InlineData("System.Activator.CreateInstance(\"a\", \"b\")")]
    [InlineData("typeof(string).Assembly")]
    [InlineData("note.GetType().Assembly")]
    [InlineData("note.GetHashCode()")]
    [InlineData("bus.gear.GetType()")]
    [InlineData("(bus.gear + 1).ToString()")]
    [InlineData("bus.vehicle_speed.Equals(1)")]
    [InlineData("(bus.vehicle_speed * 2)._number")]
    [InlineData("nameof(bus)")]
    [InlineData("new string('x', 1 << 30)")]
    [InlineData("System.Linq.Enumerable.Range(0, 2147483647).Sum()")]
    [InlineData("note.PadLeft(1000000000)")]
    [InlineData("string.Concat(note, note)")]
    [InlineData("string.Format(\"{0}\", note)")]
    [InlineData("((System.Func<int>)(() => { while (true) { } }))() > 0")]
    [InlineData("(() => 1)()")]
    [InlineData("bus.stored_codes.Items.Length")]
    [InlineData("bus.stored_codes[0]")]
    [InlineData("note[0] == note[1]")]
    [InlineData("s.Channel(0)")]
    [InlineData("Take.Truth(s.Channel(0))")]
    [InlineData("this.All()")]
    [InlineData("E0(s)")]
    [InlineData("All()")]
    [InlineData("u_rpm.Symbol")]
    [InlineData("inexact")]
    [InlineData("1; } public static int X = 1; int Y() { return 1")]
    [InlineData("1) + (2")]
    [InlineData("1 /* */ ); System.Environment.Exit(3); (")]
    [InlineData("\"\" is { Length: > 0 } x && x == x")]
    [InlineData("note is string")]
    [InlineData("(object)note == null")]
    [InlineData("(int)bus.gear")]
    [InlineData("unchecked(2000000000 * 3)")]
    [InlineData("default(int)")]
    [InlineData("stackalloc int[5]")]
    [InlineData("await note")]
    [InlineData("throw null")]
    [InlineData("bus.gear switch { _ => 1 }")]
    [InlineData("from x in note select x")]
    [InlineData("(1, 2).Item1")]
    [InlineData("note!.Length")]
    [InlineData("note?.Length")]
    [InlineData("&note")]
    [InlineData("*note")]
    [InlineData("bus.gear++")]
    [InlineData("[1, 2]")]
    [InlineData("new { a = 1 }")]
    [InlineData("new int[5]")]
    [InlineData("sizeof(int)")]
    [InlineData("note.Length.CompareTo(3)")]
    [InlineData("$\"{note.GetType()}\"")]
    [InlineData("$\"{bus.gear:F999999999}\"")]
    [InlineData("$\"{bus.gear,1000000000}\"")]
    [InlineData("note.Split()")]
    [InlineData("note.ToUpper() == note")]
    [InlineData("note.StartsWith(\"x\")")]
    [InlineData("note.Contains(\"x\", System.StringComparison.CurrentCulture)")]
    [InlineData("pow(x: 2, power: 3)")]
    [InlineData("abs<decimal>(2)")]
    [InlineData("Functions.abs(2)")]
    [InlineData("Wanted")]
    [InlineData("#if true\n1\n#endif")]
    [InlineData("\n#line 1 \"x\"\n1")]
    [InlineData("\"x\"u8.Length")]
    [InlineData("'x' == 'x'")]
    public void What_reaches_beyond_the_expression_is_refused(string text)
    {
        var report = Author.Compile(text).Report;
        Assert.True(report.HasErrors);
        Assert.All(report.InOrder, finding => Assert.StartsWith("EXP", finding.Code.Id));
        Assert.All(report.InOrder, finding => Assert.InRange(finding.Place.Line, 1, 5));
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
