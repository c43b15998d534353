using EolSequencer.Station.Explaining;
using Spectre.Console;

namespace EolSequencer.Cli.Explaining;

/// <summary>An explanation as lines of text, a thing a line, what belongs together indented together.</summary>
internal static class ExplanationLines
{
    /// <summary>A file gets the bare lines, never wrapped.</summary>
    public static void Write(IAnsiConsole console, Explanation explanation)
    {
        foreach (var line in Of(explanation))
        {
            if (!console.Profile.Out.IsTerminal) console.Profile.Out.Writer.WriteLine(line.Text);
            else console.Write(new Text(line.Text + "\n", line.Weight switch { Weight.Heading => new Style(decoration: Decoration.Bold), Weight.Caution => new Style(Color.Yellow), Weight.Detail => new Style(Color.Grey), _ => Style.Plain }));
        }
    }

    /// <summary>How a line stands out where a terminal can show it; its words say the same without.</summary>
    internal enum Weight
    {
        Plain,
        Heading,
        Caution,
        Detail,
    }

    internal sealed record Line(string Text, Weight Weight = Weight.Plain);

    public static IEnumerable<Line> Of(Explanation explanation)
    {
        foreach (var line in Head(explanation)) yield return line;
        foreach (var part in explanation.Parts)
        {
            yield return new Line("");
            yield return new Line($"{part.Title} ({part.When}), {PlannedText.Of(part.Planned)}", Weight.Heading);
            foreach (var line in part.Items.SelectMany(item => Of(item, 1, null))) yield return line;
        }

        if (explanation.NotPlanned.IsEmpty) yield break;
        yield return new Line("");
        yield return new Line("Not planned for this vehicle", Weight.Heading);
        foreach (var fact in explanation.NotPlanned) yield return new Line($"  {fact.Label}: {fact.Text}");
    }

    private static IEnumerable<Line> Head(Explanation explanation)
    {
        yield return new Line($"{explanation.Title}: {explanation.Sequence} revision {explanation.Revision}, for {explanation.Order.Vin}", Weight.Heading);
        yield return new Line($"order {explanation.Order.Id}, {explanation.VehicleType} ({explanation.Order.VehicleType}): {PlannedText.Options(explanation)}");
        yield return new Line($"{explanation.Plant}, {(explanation.Station is { } station ? $"station {station.Id}" : $"a station of kind {explanation.StationKind}")}");
        yield return new Line($"{PlannedText.Counts(explanation)}; planned {PlannedText.Against(explanation)}");
        foreach (var device in explanation.Devices) yield return new Line($"device {device.Label}: {device.Text}", Weight.Detail);
        foreach (var parameter in explanation.Parameters) yield return new Line($"parameter {parameter.Label}: {parameter.Text}", Weight.Detail);
    }

    private static IEnumerable<Line> Of(ExplainedItem item, int depth, string? placeAround)
    {
        var indent = new string(' ', 2 * depth);
        var place = item.Place is { } where && where.Text != placeAround ? $", at: {where}" : "";
        if (item is ExplainedStep step) return OfStep(step, indent, place);
        var block = (ExplainedBlock)item;
        var id = block.Id.Length == 0 || block.Title is null ? "" : $" [{block.Id}]";
        return
        [
            new Line($"{indent}{PlannedText.Heading(block)}{id}, {PlannedText.Of(block.Planned)}{place}", Weight.Heading),
            .. Caution(block, indent),
            .. block.Facts.Select(fact => new Line($"{indent}    {fact.Label}: {fact.Text}", Weight.Detail)),
            .. block.Items.SelectMany(inner => Of(inner, depth + 1, block.Place?.Text ?? placeAround)),
        ];
    }

    private static IEnumerable<Line> OfStep(ExplainedStep step, string indent, string place)
    {
        var title = step.Title is { } called ? $" {called}" : "";
        yield return new Line($"{indent}{step.Number}. {step.Id}{title}, {PlannedText.Of(step.Planned)}{place}");
        foreach (var line in Caution(step, indent)) yield return line;
        if (step.Prompt is { } prompt) yield return new Line($"{indent}    \"{prompt}\"", Weight.Heading);
        yield return new Line($"{indent}    {step.Does}{(step.MustBe is { } wanted ? $"; must be: {wanted}" : "")}");
        foreach (var fact in step.Facts) yield return new Line($"{indent}    {fact.Label}: {fact.Text}", Weight.Detail);
        if (step.Picture is { } picture) yield return new Line($"{indent}    picture: {Path.GetFileName(picture)}", Weight.Detail);
    }

    private static IEnumerable<Line> Caution(ExplainedItem item, string indent) =>
        item.Caution is { } caution ? [new Line($"{indent}    CAUTION: {caution}", Weight.Caution)] : [];
}
