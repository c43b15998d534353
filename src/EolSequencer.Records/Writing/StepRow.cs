using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Records.Writing;

/// <summary>
/// A step result as the view <c>step</c> shows it. The value is that of the first criterion: as number where it is one, to
/// be sorted and compared, and as the exact text.
/// </summary>
internal readonly record struct StepRow(
    string Step,
    int Attempt,
    Verdict Measured,
    Verdict Counted,
    MissingCause? Cause,
    double? Value,
    string? ValueText,
    string? Unit,
    double? Low,
    double? High,
    long Took)
{
    public static StepRow Of(Judged judged)
    {
        var first = judged.Criteria.IsDefaultOrEmpty ? null : judged.Criteria[0];
        return new StepRow(
            judged.Step,
            judged.Attempt,
            judged.Measured,
            judged.Counted,
            judged.Cause,
            ValueOf(first),
            first?.Value,
            first?.Unit,
            NumberOf(first?.Low),
            NumberOf(first?.High),
            judged.Took);
    }

    /// <summary>The value as number; null for a text that only looks like one, such as a software version 2.10.</summary>
    public static double? ValueOf(CriterionResult? criterion) => criterion is null or { IsText: true } ? null : NumberOf(criterion.Value);

    /// <summary>The nearest binary number of a decimal text; null when the text is none.</summary>
    public static double? NumberOf(string? text) =>
        text is not null && NumberText.TryParse(text, out _) ? double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture) : null;
}
