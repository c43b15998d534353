namespace EolSequencer.Records.SequenceControl;

/// <summary>A text that was put forward, as the acts have left it.</summary>
/// <param name="Hash">Of all its files; no two drafts have the same.</param>
/// <param name="By">Badge of who put it forward.</param>
internal sealed record DraftRow(string Id, string Hash, SequenceSubmitted Submitted, string? By = null);
