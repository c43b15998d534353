namespace EolSequencer.Records.Canonical;

/// <summary>What an event says of the series kept beside it.</summary>
/// <param name="Points">Number of points.</param>
/// <param name="Length">Bytes of the content before compression.</param>
/// <param name="Hash">SHA-256 of the content before compression, hex, lower case: another compressor gives the same.</param>
internal sealed record SeriesReference(int Points, int Length, string Hash);
