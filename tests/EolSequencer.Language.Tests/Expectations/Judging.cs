using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expectations;

/// <summary>Reads the value of the first key of a document as an expectation for one kind of value.</summary>
internal static class Judging
{
    public static JudgedValue Number(string unit) => new("meter.reading", ValueShape.Number(UnitTable.Required(unit)));

    public static JudgedValue Count { get; } = new("bus.count", ValueShape.Count);

    public static JudgedValue Text { get; } = new("bus.software", ValueShape.Text(12));

    public static JudgedValue Choice { get; } = new("rims", ValueShape.OneOf("steel", "alloy"));

    public static JudgedValue Truth { get; } = new("bus.switch", ValueShape.Truth);

    public static JudgedValue List { get; } = new("bus.stored_codes", ValueShape.List);

    public static JudgedValue Time { get; } = new("the time taken", ValueShape.Time);

    /// <summary>Takes every C# text, and knows the limit <c>usual</c>.</summary>
    public static IExpectationNames AnyNames { get; } = new AnyName();

    /// <summary>The expectation of a text without faults.</summary>
    public static Expectation Well(string expect, JudgedValue judged)
    {
        var report = new Report();
        var bound = Bind(Texts.FirstScalar($"expect: {expect}\n"), judged, report);
        Assert.Empty(report.InOrder);
        return Assert.IsAssignableFrom<Expectation>(bound);
    }

    /// <summary>The only finding about a text.</summary>
    public static Diagnostic Fault(string expect, JudgedValue judged)
    {
        var report = new Report();
        Bind(Texts.FirstScalar($"expect: {expect}\n"), judged, report);
        return Assert.Single(report.InOrder);
    }

    /// <summary>For documents that state their diagnostics: every value is bound.</summary>
    public static Action<SourceText, Report> Check(JudgedValue judged) => (source, report) =>
    {
        if (YamlReader.Read(source, report) is not YamlMap map) return;
        foreach (var entry in map.Entries) Bind(entry.Value, judged, report);
    };

    private static Expectation? Bind(YamlNode node, JudgedValue judged, Report report) =>
        ExpectationParser.Parse(node, report) is { } syntax ? new ExpectationBinder(judged, AnyNames, report).Bind(syntax) : null;

    private sealed class AnyName : IExpectationNames
    {
        public Expression Code(ScalarPart part, ValueShape wanted) => new(part.Text, part.Place);

        public Expectation Limit(ExpectationSyntax.Limit limit, JudgedValue judged) =>
            new Expectation.ByVehicle(limit.Index is { } index ? $"{limit.Name}[{index}]" : limit.Name.Text, []);
    }
}
