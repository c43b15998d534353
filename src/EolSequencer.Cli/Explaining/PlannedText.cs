using System.Globalization;
using EolSequencer.Station.Explaining;

namespace EolSequencer.Cli.Explaining;

/// <summary>How planned times and headings read, on the terminal and on the page.</summary>
internal static class PlannedText
{
    public static string Of(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.##} s");

    /// <summary>The planned time of everything against the cycle time.</summary>
    public static string Against(Explanation explanation) => explanation.CycleTime is not { } cycle
        ? Of(explanation.Planned)
        : string.Create(CultureInfo.InvariantCulture, $"{Of(explanation.Planned)} of {Of(cycle)} ({100 * (explanation.Planned / cycle):0} %{(explanation.Planned > cycle ? ", too long" : "")})");

    public static string Counts(Explanation explanation)
    {
        var steps = explanation.Steps.ToList();
        return string.Create(CultureInfo.InvariantCulture, $"{steps.Count} steps, {steps.Count(step => step.IsJudged)} judged, {steps.Count(step => step.Prompt is not null)} for a person");
    }

    /// <summary>What a block is called and how its parts run.</summary>
    public static string Heading(ExplainedBlock block) => block.Kind switch
    {
        BlockKind.SideBySide => "Side by side",
        BlockKind.Branch => $"Branch {block.Title}",
        BlockKind.AnyOrder => $"{block.Title?.Text ?? block.Id}, in any order",
        _ => block.Title?.Text ?? block.Id,
    };

    public static string Options(Explanation explanation) =>
        string.Join(", ", explanation.Order.Options.Select(option => $"{option.Key} {option.Value}"));
}
