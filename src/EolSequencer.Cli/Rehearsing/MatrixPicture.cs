using System.Globalization;
using System.Xml.Linq;
using EolSequencer.Cli.Output;
using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>The matrix of faults and steps as a drawing (SVG 1.1): only what is there is drawn, with guide lines to read it by.</summary>
internal static class MatrixPicture
{
    private const int Cell = 11;
    private const int Guide = 5;
    private const int LetterWidth = 5;
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static XElement Of(CampaignFindings findings)
    {
        var faults = findings.Faults.Where(fault => fault.Runs > 0).ToList();
        var steps = findings.Steps.Where(step => step.IsJudged || step.Faults > 0).ToList();
        var left = (LetterWidth * faults.Select(fault => Label(fault).Length).DefaultIfEmpty().Max()) + 10;
        var top = (LetterWidth * steps.Select(step => step.Id.Length).DefaultIfEmpty().Max()) + 10;
        var (width, height) = (left + (Cell * steps.Count) + 4, top + (Cell * faults.Count) + 4);
        var picture = Element("svg", ("width", width), ("height", height), ("viewBox", $"0 0 {width} {height}"), ("role", "img"));
        picture.Add(new XElement(Svg + "title", $"{faults.Count} faults and {steps.Count} steps"));
        for (var row = 0; row < faults.Count; row++)
        {
            var y = top + (Cell * row);
            if (row % Guide == 0) picture.Add(Line(0, y, width, y));
            picture.Add(Text(4, y + Cell - 2, Label(faults[row]), faults[row].Escapes.IsEmpty ? null : "bold"));
        }

        for (var column = 0; column < steps.Count; column++)
        {
            var x = left + (Cell * column);
            if (column % Guide == 0) picture.Add(Line(x, 0, x, height));
            var text = Text(0, 0, steps[column].Id, steps[column].Faults > 0 ? null : "bold");
            text.SetAttributeValue("transform", $"translate({x + Cell - 2} {top - 4}) rotate(-90)");
            picture.Add(text);
        }

        for (var row = 0; row < faults.Count; row++)
        {
            for (var column = 0; column < steps.Count; column++)
            {
                if (findings.Catches.TryGetValue((faults[row].Text, steps[column].Id), out var found))
                {
                    Add(picture, left + (Cell * column), top + (Cell * row), found, $"{faults[row].Text}: {steps[column].Id} in {Words.Count(found.Runs, "run")}");
                }
            }
        }

        return picture;
    }

    private static string Label(FaultFinding fault) => $"{fault.Text} ({fault.Class}){(fault.Escapes.IsEmpty ? "" : " escapes")}";

    private static void Add(XElement picture, int x, int y, Catch found, string said)
    {
        var cell = Element("g");
        cell.Add(new XElement(Svg + "title", said));
        if (found.IsFirst) cell.Add(Element("rect", ("x", x + 1), ("y", y + 1), ("width", Cell - 2), ("height", Cell - 2), ("fill", "#ffd"), ("stroke", "#111"), ("stroke-width", "1")));
        cell.Add(Text(x + 3, y + Cell - 2, Words.Sign(found.Worst), null));
        picture.Add(cell);
    }

    private static XElement Line(int x1, int y1, int x2, int y2) => Element("line", ("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2), ("stroke", "#ccc"), ("stroke-width", "1"));

    private static XElement Text(int x, int y, string text, string? weight)
    {
        var element = Element("text", ("x", x), ("y", y));
        if (weight is not null) element.SetAttributeValue("font-weight", weight);
        element.Add(text);
        return element;
    }

    private static XElement Element(string name, params ReadOnlySpan<(string Name, object Value)> attributes)
    {
        var element = new XElement(Svg + name);
        foreach (var (attribute, value) in attributes) element.SetAttributeValue(attribute, Convert.ToString(value, CultureInfo.InvariantCulture));
        return element;
    }
}
