namespace EolSequencer.Records.Correcting;

/// <summary>What became of a number, as the acts have left it.</summary>
/// <param name="Corrected">The number that it was corrected to; null: that was taken back.</param>
/// <param name="By">Badge of who corrected it last.</param>
internal sealed record VinCorrectionRow(string Vin, string Reason, string? Corrected = null, string? By = null);
