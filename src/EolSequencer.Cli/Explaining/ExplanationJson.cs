using EolSequencer.Station.Explaining;

namespace EolSequencer.Cli.Explaining;

/// <summary>An explanation for a program to read; times in seconds, null members left out.</summary>
internal static class ExplanationJson
{
    public static object Of(Explanation explanation) => new
    {
        sequence = explanation.Sequence,
        revision = explanation.Revision,
        title = explanation.Title.Text,
        vin = explanation.Order.Vin.Text,
        order = explanation.Order.Id,
        vehicleType = explanation.Order.VehicleType,
        options = explanation.Order.Options.ToDictionary(option => option.Key, option => option.Value.ToString()),
        station = explanation.Station?.Id,
        stationKind = explanation.StationKind,
        cycleTimeSeconds = explanation.CycleTime?.TotalSeconds,
        plannedSeconds = explanation.Planned.TotalSeconds,
        devices = Facts(explanation.Devices),
        parameters = Facts(explanation.Parameters),
        parts = explanation.Parts.Select(part => new { title = part.Title, when = part.When, plannedSeconds = part.Planned.TotalSeconds, items = part.Items.Select(Item) }),
        notPlanned = Facts(explanation.NotPlanned),
    };

    private static object Item(ExplainedItem item) => item switch
    {
        ExplainedStep step => new
        {
            number = step.Number,
            id = step.Id,
            title = step.Title?.Text,
            place = step.Place?.Text,
            caution = step.Caution?.Text,
            prompt = step.Prompt?.Text,
            does = step.Does,
            mustBe = step.MustBe,
            judged = step.IsJudged,
            plannedSeconds = step.Planned.TotalSeconds,
            facts = Facts(step.Facts),
            picture = step.Picture is { } picture ? Path.GetFileName(picture) : null,
        },
        ExplainedBlock block => new
        {
            kind = block.Kind switch { BlockKind.SideBySide => "side-by-side", BlockKind.AnyOrder => "any-order", BlockKind.Branch => "branch", _ => "group" },
            id = block.Id.Length == 0 ? null : block.Id,
            title = block.Title?.Text,
            place = block.Place?.Text,
            caution = block.Caution?.Text,
            plannedSeconds = block.Planned.TotalSeconds,
            facts = Facts(block.Facts),
            items = block.Items.Select(Item),
        },
        _ => throw new InvalidOperationException("an item is a step or a block"),
    };

    private static IEnumerable<object> Facts(IEnumerable<ExplainedFact> facts) => facts.Select(fact => new { about = fact.Label, text = fact.Text.Text });
}
