using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>A step result on one line, with the value of its first criterion.</summary>
/// <param name="N">Number of its event.</param>
/// <param name="Step">Full id with loop values.</param>
/// <param name="Cause">Why there is no value, as a word; null when there is one.</param>
/// <param name="Value">The value as binary number, for sorting and figures; null when it is none.</param>
/// <param name="ValueText">The value exactly as recorded; null when missing.</param>
public sealed record StepSummary(
    int N,
    string Step,
    int Attempt,
    Verdict Measured,
    Verdict Counted,
    string? Cause,
    double? Value,
    string? ValueText,
    string? Unit,
    double? Low,
    double? High,
    TimeSpan Took);
