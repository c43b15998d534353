using System.Collections.Immutable;

namespace EolSequencer.Records.Release;

/// <summary>The release of a vehicle as the acts have left it.</summary>
/// <param name="State"><c>released</c>, or <c>returned</c> when a nonconformity was opened since, the vehicle was run again, or its number was corrected.</param>
/// <param name="By">Badge of who signed.</param>
internal sealed record ReleaseRow(string Vin, string State, ImmutableArray<string> Route, ImmutableArray<string> Runs, string? By = null)
{
    public const string IsReleased = "released";

    public const string IsReturned = "returned";
}
