namespace EolSequencer.Language.Syntax;

/// <summary>The words a key accepts and what each means.</summary>
internal sealed class Words<T>(params (string Word, T Meaning)[] entries)
{
    /// <summary>The words in the order in which messages list them.</summary>
    public IReadOnlyList<string> All { get; } = [.. entries.Select(entry => entry.Word)];

    /// <summary>The meaning of one of <see cref="All"/>.</summary>
    public T this[string word] => entries.First(entry => entry.Word == word).Meaning;
}
