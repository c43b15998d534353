namespace EolSequencer.Records.Correcting;

/// <summary>A number of a vehicle that was wrong.</summary>
/// <param name="Wrong">As the runs have it.</param>
/// <param name="By">Badge of who corrected it.</param>
public sealed record VinCorrection(string Wrong, string Right, string Reason, string? By)
{
    internal static VinCorrection Of(VinCorrectionRow row) => new(row.Vin, row.Corrected!, row.Reason, row.By);
}
