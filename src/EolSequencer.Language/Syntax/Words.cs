namespace EolSequencer.Language.Syntax;

/// <summary>The words a key accepts and what each means.</summary>
/// <remarks>Plain loops: a query over each kind of meaning would be compiled at every start, by the dozen of methods.</remarks>
internal sealed class Words<T>
{
    private readonly string[] _words;
    private readonly T[] _meanings;

    public Words(params (string Word, T Meaning)[] entries)
    {
        _words = new string[entries.Length];
        _meanings = new T[entries.Length];
        for (var at = 0; at < entries.Length; at++) (_words[at], _meanings[at]) = entries[at];
    }

    /// <summary>The words in the order in which messages list them.</summary>
    public IReadOnlyList<string> All => _words;

    /// <summary>The meaning of one of <see cref="All"/>.</summary>
    public T this[string word] => _meanings[Array.IndexOf(_words, word)];
}
