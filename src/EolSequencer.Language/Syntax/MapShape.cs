namespace EolSequencer.Language.Syntax;

/// <summary>
/// Which keys a map of one kind may and must have, what may stand behind each, and what it means. Whoever reads such a map
/// reads it by this, and the JSON Schema and the editor are made of it, so none of them can say something else.
/// </summary>
internal sealed class MapShape
{
    private readonly Dictionary<string, (MapKey Key, Lazy<IReadOnlyList<ValueForm>> Forms)> _known;

    /// <param name="what">What such a map is, as messages call it: "a step".</param>
    /// <param name="required">Keys that must be there.</param>
    /// <param name="optional">Keys that may be there.</param>
    /// <param name="exactlyOne">Keys of which exactly one must be there; empty: no such rule.</param>
    public MapShape(string what, MapKey[] required, MapKey[] optional, params string[] exactlyOne)
    {
        What = what;
        AllKeys = [.. required, .. optional];
        Keys = [.. AllKeys.Select(key => key.Name)];
        Required = [.. required.Select(key => key.Name)];
        ExactlyOne = exactlyOne;
        _known = AllKeys.ToDictionary(key => key.Name, key => (key, new Lazy<IReadOnlyList<ValueForm>>(key.Form.Alternatives)), StringComparer.Ordinal);
    }

    public string What { get; }

    /// <summary>All keys, the required ones first.</summary>
    public IReadOnlyList<MapKey> AllKeys { get; }

    /// <summary>The names of <see cref="AllKeys"/>.</summary>
    public IReadOnlyList<string> Keys { get; }

    public IReadOnlyList<string> Required { get; }

    public IReadOnlyList<string> ExactlyOne { get; }

    public bool Knows(string key) => _known.ContainsKey(key);

    /// <summary>The description of a key; null when such a map has none of this name.</summary>
    public MapKey? Find(string key) => _known.GetValueOrDefault(key).Key;

    /// <summary>What may stand behind a key, each alternative by itself.</summary>
    public IReadOnlyList<ValueForm> FormsOf(string key) => _known[key].Forms.Value;
}
