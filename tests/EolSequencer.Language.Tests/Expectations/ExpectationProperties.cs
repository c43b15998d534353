using CsCheck;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expectations;

/// <summary>What a record says about a window must be what an author could have written, and no text may break the reader.</summary>
public class ExpectationProperties
{
    private static readonly Gen<decimal> Numbers =
        Gen.Select(Gen.Int[-999_999, 999_999], Gen.Int[0, 4], (digits, places) => digits / (decimal)Math.Pow(10, places));

    private static readonly Gen<string> Texts =
        Gen.OneOf(
            Gen.Const("1"), Gen.Const("2.5"), Gen.Const(" .. "), Gen.Const(" ± "), Gen.Const("bar"), Gen.Const(" "), Gen.Const("("), Gen.Const(")"),
            Gen.Const("["), Gen.Const("]"), Gen.Const(","), Gen.Const("/"), Gen.Const("\""), Gen.Const("equals "), Gen.Const("one of "),
            Gen.Const("matches "), Gen.Const("at least "), Gen.Const("limits."), Gen.Const("–"), Gen.Const("1/min"), Gen.Const("'"), Gen.Const("e5"),
            Gen.String[Gen.Char, 0, 3])
        .Array[0, 8].Select(string.Concat);

    [Fact]
    public void A_described_window_reads_as_the_same_window() =>
        Gen.Select(Numbers, Numbers, Gen.Int[0, 2], Gen.Int[0, UnitTable.All.Length - 1]).Sample((a, b, open, unit) =>
        {
            var written = new Window(open == 1 ? null : Math.Min(a, b), open == 2 ? null : Math.Max(a, b), UnitTable.All[unit]);
            var report = new Report();
            var read = Read(written.Describe(), new JudgedValue("x", ValueShape.Number(written.Unit)), report) as Expectation.Within;
            return report.InOrder.Count == 0 && read is not null && End(read.Low) == written.Low && End(read.High) == written.High && read.Unit == written.Unit;
        });

    [Fact]
    public void Every_text_gives_an_expectation_or_a_finding_inside_the_text() =>
        Gen.Select(Texts, Gen.OneOf(Gen.Const(Judging.Number("bar")), Gen.Const(Judging.Text), Gen.Const(Judging.List))).Sample((text, judged) =>
        {
            var report = new Report();
            var bound = Read(text, judged, report);
            return bound is null == report.HasErrors && report.InOrder.All(one => one.Place.Line == 1 && one.Place.EndColumn <= text.Length + 1);
        });

    private static Expectation? Read(string text, JudgedValue judged, Report report)
    {
        // The text goes around the YAML reader: it is the whole of a file, as one plain scalar.
        var source = Language.Tests.Texts.Source(text.Replace('\n', ' ').Replace('\r', ' '));
        var scalar = new YamlScalar(source, 0, source.Text.Length, source.Text, ScalarStyle.Plain);
        return ExpectationParser.Parse(scalar, report) is { } syntax ? new ExpectationBinder(judged, new Nobody(), report).Bind(syntax) : null;
    }

    private static decimal? End(Operand? end) => end is Operand.Constant { Value: NumberValue number } ? number.Number : null;

    private sealed class Nobody : IExpectationNames
    {
        public Model.Expressions.Expression Code(ScalarPart part, ValueShape wanted) => new(part.Text, part.Place);

        public Expectation Limit(ExpectationSyntax.Limit limit, JudgedValue judged) => new Expectation.ByVehicle(limit.Name.Text, []);
    }
}
