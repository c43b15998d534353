namespace EolSequencer.Records.SequenceControl;

/// <summary>A file of a text that was put forward.</summary>
/// <param name="Path">In the plant's folder.</param>
/// <param name="Hash">SHA-256 of its bytes, hex, lower case.</param>
public sealed record DraftFile(string Path, string Hash);
