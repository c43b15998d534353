namespace EolSequencer.Language.Editing;

/// <summary>What an editor shows beside a word.</summary>
/// <param name="Title">The word and what it is.</param>
/// <param name="Lines">More about it; may be empty.</param>
/// <param name="Range">The word.</param>
public sealed record Explanation(string Title, IReadOnlyList<string> Lines, TextRange Range);
