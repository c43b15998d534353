using EolSequencer.Language.Syntax;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>Reads what a plan counts for prompts and exchanges.</summary>
internal static class PlannedTimesBinder
{
    /// <summary>A planned time is at most this long.</summary>
    public static readonly TimeSpan Most = TimeSpan.FromHours(1);

    /// <summary>The keys.</summary>
    public static MapShape Shape { get; } = new(
        "planned times",
        [],
        [
            Time("ask", "a person does something that a device sees"),
            Time("confirm", "a person does something and confirms it"),
            Time("judge", "a person judges"),
            Time("enter", "a person types a value"),
            Time("scan", "a person scans a code"),
            Time("choose", "a person picks a word"),
            Time("caution", "a person acknowledges a caution"),
            Time("await", "a condition becomes true"),
            Time("exchange", "one exchange with a device"),
        ]);

    public static PlannedTimes Read(MapReader plant)
    {
        var usual = new PlannedTimes();
        if (plant.Open("planned", Shape) is not { } keys) return usual;
        return new PlannedTimes
        {
            Ask = keys.Duration("ask") ?? usual.Ask,
            Confirm = keys.Duration("confirm") ?? usual.Confirm,
            Judge = keys.Duration("judge") ?? usual.Judge,
            Enter = keys.Duration("enter") ?? usual.Enter,
            Scan = keys.Duration("scan") ?? usual.Scan,
            Choose = keys.Duration("choose") ?? usual.Choose,
            Caution = keys.Duration("caution") ?? usual.Caution,
            Await = keys.Duration("await") ?? usual.Await,
            Exchange = keys.Duration("exchange") ?? usual.Exchange,
        };
    }

    private static MapKey Time(string name, string meaning) => new(name, Forms.Duration(TimeSpan.Zero, Most), meaning);
}
