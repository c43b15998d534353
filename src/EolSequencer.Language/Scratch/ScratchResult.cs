namespace EolSequencer.Language.Scratch;

/// <summary>What came of a line of C#.</summary>
/// <param name="Text">The value as people read it; empty when the line gives none.</param>
/// <param name="Trouble">What was wrong with it, a line for each fault; null when nothing was.</param>
public sealed record ScratchResult(string Text, string? Trouble);
