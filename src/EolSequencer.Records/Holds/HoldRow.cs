namespace EolSequencer.Records.Holds;

/// <summary>A hold as the acts have left it.</summary>
/// <param name="State"><c>placed</c> or <c>lifted</c>.</param>
/// <param name="Lifted">Why it was lifted.</param>
internal sealed record HoldRow(string Id, string State, HoldPlaced Placed, string? Lifted = null)
{
    public const string IsPlaced = "placed";

    public const string IsLifted = "lifted";
}
