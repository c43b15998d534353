namespace EolSequencer.Language.Tests.Reference;

/// <summary>A row about a key, or about several that go together.</summary>
/// <param name="Line">Where it stands, from 1.</param>
/// <param name="Place">Where such a key may stand.</param>
/// <param name="Examples">As they are written; each stands by itself.</param>
internal sealed record ReferenceRow(int Line, string Place, IReadOnlyList<string> Keys, IReadOnlyList<string> Examples);
