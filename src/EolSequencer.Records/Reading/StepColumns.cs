using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>A row of the view <c>step</c> as the database gives it.</summary>
internal sealed class StepColumns
{
    public const string All =
        """
        n AS N, step AS Step, attempt AS Attempt, measured AS Measured, counted AS Counted, cause AS Cause, value AS Value,
        value_text AS ValueText, unit AS Unit, low AS Low, high AS High, took_us AS TookUs
        """;

    public int N { get; init; }
    public string Step { get; init; } = "";
    public int Attempt { get; init; }
    public string Measured { get; init; } = "";
    public string Counted { get; init; } = "";
    public string? Cause { get; init; }
    public double? Value { get; init; }
    public string? ValueText { get; init; }
    public string? Unit { get; init; }
    public double? Low { get; init; }
    public double? High { get; init; }
    public long TookUs { get; init; }

    public StepSummary ToSummary() => new(
        N, Step, Attempt, VerdictOf(Measured), VerdictOf(Counted), Cause, Value, ValueText, Unit, Low, High, TimeSpan.FromMicroseconds(TookUs));

    private static Verdict VerdictOf(string word) =>
        Verdicts.TryParse(word, out var verdict) ? verdict : throw new FormatException($"'{word}' is no verdict");
}
