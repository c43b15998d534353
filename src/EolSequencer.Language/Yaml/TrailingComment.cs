using EolSequencer.Model.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>A comment behind a value, in the same line.</summary>
/// <param name="Spaces">How many blanks stand between the value and the <c>#</c>.</param>
/// <param name="Text">Everything behind the <c>#</c>.</param>
/// <param name="Place">From the <c>#</c> to the end of the line.</param>
internal sealed record TrailingComment(int Spaces, string Text, SourcePlace Place);
