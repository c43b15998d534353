using System.Globalization;
using System.Xml.Linq;
using EolSequencer.Station.Explaining;
using static EolSequencer.Cli.Explaining.Tags;

namespace EolSequencer.Cli.Explaining;

/// <summary>The steps as one table whose head comes back on every sheet of paper.</summary>
internal static class ExplanationTable
{
    private const int DeepestShown = 6;

    public static XElement Of(Explanation explanation) => Tag(
        "table",
        Tag("colgroup", new[] { "box", "number", "what", "must", "time" }.Select(name => Void("col", ("class", name)))),
        Tag("thead",
            Tag("tr", Class("running"), Tag("th", ("colspan", "5"), Written(explanation.Title), $", {explanation.Sequence} revision {explanation.Revision}, {explanation.Order.Vin}, order {explanation.Order.Id}")),
            Tag("tr", Column("Done"), Column("No."), Column("What"), Column("Must be"), Column("Planned"))),
        "\n",
        explanation.Parts.Select(part => Tag(
            "tbody",
            Heading(0, "part", $"{part.Title}: {part.When}", part.Planned),
            part.Items.SelectMany(item => Rows(item, 1)))));

    private static XElement Column(string text) => Tag("th", ("scope", "col"), text);

    private static IEnumerable<object> Rows(ExplainedItem item, int depth) => item switch
    {
        ExplainedStep step => [Row(step, depth), "\n"],
        ExplainedBlock block =>
        [
            Heading(depth, block.Kind is BlockKind.SideBySide or BlockKind.Branch ? "beside" : "group", PlannedText.Heading(block), block.Planned, block),
            .. block.Items.SelectMany(inner => Rows(inner, depth + 1)),
        ],
        _ => throw new InvalidOperationException("an item is a step or a block"),
    };

    private static XElement Heading(int depth, string kind, string text, TimeSpan planned, ExplainedBlock? block = null) => Tag(
        "tr",
        Class($"{kind} {Depth(depth)}"),
        Tag("th", ("colspan", "4"), ("scope", "rowgroup"),
            Tag("span", Class("heading"), block?.Title?.Language is { Length: > 0 } language ? new XAttribute("lang", language) : null, text),
            Place(block),
            Caution(block),
            Facts(block)),
        Tag("td", Class("time"), PlannedText.Of(planned)));

    private static XElement Row(ExplainedStep step, int depth)
    {
        var number = step.Number.ToString(CultureInfo.InvariantCulture);
        return Tag(
            "tr",
            Class($"step {Depth(depth)}"),
            Tag("td", Class("box"), Void("input", ("type", "checkbox"), ("aria-label", $"step {number} done"))),
            Tag("td", Class("number"), number),
            Tag("td", Class("what"),
                step.Prompt is null ? null : Place(step),
                Caution(step),
                Picture.Of(step),
                step.Title is { } title ? Tag("p", Class("heading"), Written(title)) : null,
                step.Prompt is { } prompt ? Tag("p", Class("prompt"), Written(prompt)) : null,
                Tag("p", Class(step.Prompt is null ? "does" : "ends"), step.Prompt is null ? "By itself: " : "", step.Does),
                Facts(step, Tag("li", Class("id"), step.Id))),
            Tag("td", Class("must"), step.MustBe ?? ""),
            Tag("td", Class("time"), PlannedText.Of(step.Planned)));
    }

    private static XElement? Place(ExplainedItem? item) => item?.Place is { } place ? Tag("span", Class("place"), "at: ", Written(place)) : null;

    private static XElement? Caution(ExplainedItem? item) =>
        item?.Caution is { } caution ? Tag("p", Class("caution"), Tag("b", "⚠ Caution: "), Written(caution)) : null;

    private static XElement? Facts(ExplainedItem? item, XElement? last = null) => item is null || (item.Facts.IsEmpty && last is null) ? null : Tag(
        "ul",
        Class("facts"),
        item.Facts.Select(fact => Tag("li", Tag("i", $"{fact.Label}: "), Written(fact.Text))),
        last);

    private static string Depth(int depth) => string.Create(CultureInfo.InvariantCulture, $"d{Math.Min(depth, DeepestShown)}");
}
