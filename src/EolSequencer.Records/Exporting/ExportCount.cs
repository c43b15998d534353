namespace EolSequencer.Records.Exporting;

/// <summary>What an export came to.</summary>
/// <param name="Runs">Runs that matched.</param>
/// <param name="Lines">Lines written, without the one that names columns.</param>
public sealed record ExportCount(long Runs, long Lines);
