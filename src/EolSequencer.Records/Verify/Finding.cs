namespace EolSequencer.Records.Verify;

/// <summary>Something that is not as it was written.</summary>
/// <param name="Kind">Which part.</param>
/// <param name="Run">Id of the run; null when it is of none.</param>
/// <param name="Number">Number of the event in the run, or of the entry in the ledger; null when it is of none.</param>
/// <param name="Text">What was found and what was expected, for people.</param>
public sealed record Finding(FindingKind Kind, string? Run, long? Number, string Text)
{
    public override string ToString() => (Run, Number) switch
    {
        ({ }, { } n) => $"{Run} event {n}: {Text}",
        ({ }, null) => $"{Run}: {Text}",
        (null, { } n) => $"{(Kind == FindingKind.Seal ? "seal of " : "")}ledger entry {n}: {Text}",
        _ => Text,
    };
}
