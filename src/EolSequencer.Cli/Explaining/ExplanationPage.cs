using System.Xml.Linq;
using EolSequencer.Model.Vehicles;
using EolSequencer.Station.Explaining;
using static EolSequencer.Cli.Explaining.Tags;

namespace EolSequencer.Cli.Explaining;

/// <summary>
/// An explanation as one page for the shop floor: everything in one file, nothing that runs, for A4 paper and a pen.
/// </summary>
/// <remarks>
/// Written as XML that is HTML5 too (W3C, Polyglot Markup), so that every text is escaped by the writer and any XML reader can
/// check the page. Our own words are English; what an author wrote carries its language.
/// </remarks>
internal static class ExplanationPage
{
    public static string Of(Explanation explanation)
    {
        var page = Tag(
            "html",
            new XAttribute("lang", "en"),
            new XAttribute(XNamespace.Xml + "lang", "en"),
            Tag("head",
                Void("meta", ("charset", "utf-8")),
                Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1")),
                Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", "default-src 'none'; style-src 'unsafe-inline'; img-src data:")),
                Tag("title", $"{explanation.Title} {explanation.Order.Vin}"),
                Tag("style", PageStyle.Text)),
            Tag("body", Head(explanation), ExplanationTable.Of(explanation), NotPlanned(explanation), Signed()));
        return $"<!DOCTYPE html>\n{page.ToString(SaveOptions.DisableFormatting)}\n";
    }

    private static XElement Head(Explanation explanation) => Tag(
        "header",
        Tag("h1", Written(explanation.Title), " for ", Tag("span", Class("vin"), Grouped(explanation.Order.Vin))),
        Tag("dl",
            Pair("Vehicle", Tag("span", Written(explanation.VehicleType), $": {PlannedText.Options(explanation)}")),
            Pair("Order", explanation.Order.Id),
            Pair("Sequence", $"{explanation.Sequence} revision {explanation.Revision}"),
            Pair("Where", Tag("span", Written(explanation.Plant), explanation.Station is { } station ? $", station {station.Id}" : $", a station of kind {explanation.StationKind}")),
            Pair("Steps", PlannedText.Counts(explanation)),
            Pair("Planned", PlannedText.Against(explanation)),
            explanation.Devices.Select(fact => Pair($"Device {fact.Label}", Written(fact.Text))),
            explanation.Parameters.Select(fact => Pair($"Parameter {fact.Label}", Written(fact.Text)))));

    private static object[] Pair(string label, object text) => [Tag("dt", label), Tag("dd", text), "\n"];

    /// <summary>A vehicle number is read in groups: maker, description, the rest.</summary>
    private static string Grouped(Vin vin) => vin.Text.Length == 17 ? $"{vin.Text[..3]} {vin.Text[3..9]} {vin.Text[9..]}" : vin.Text;

    private static XElement? NotPlanned(Explanation explanation) => explanation.NotPlanned.IsEmpty ? null : Tag(
        "section",
        Tag("h2", "Not planned for this vehicle"),
        Tag("ul", explanation.NotPlanned.GroupBy(fact => fact.Text).Select(reason => new object[]
        {
            Tag("li", Tag("b", string.Join(", ", reason.Select(fact => fact.Label))), ": ", Written(reason.Key)), "\n",
        })));

    private static XElement Signed() => Tag(
        "footer",
        Tag("p", "Worked by hand from this page: name, date, signature"),
        Tag("p", Class("line"), ""),
        Tag("p", Class("small"), "This page runs nothing and decides nothing. Site rules, local codes and licensed practice come before anything it says; emergency stop and interlocks are hardware."));
}
