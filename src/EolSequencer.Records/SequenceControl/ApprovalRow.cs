namespace EolSequencer.Records.SequenceControl;

/// <summary>An approval as the acts have left it.</summary>
/// <param name="State"><c>given</c> or <c>withdrawn</c>.</param>
/// <param name="By">Badge of who gave it.</param>
/// <param name="Withdrawn">Why it was withdrawn.</param>
internal sealed record ApprovalRow(string Id, string State, SequenceApproved Approved, string? By = null, string? Withdrawn = null)
{
    public const string IsGiven = "given";

    public const string IsWithdrawn = "withdrawn";
}
