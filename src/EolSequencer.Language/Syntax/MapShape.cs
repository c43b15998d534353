namespace EolSequencer.Language.Syntax;

/// <summary>Which keys a map of one kind may and must have.</summary>
internal sealed class MapShape
{
    private readonly HashSet<string> _known;

    /// <param name="what">What such a map is, as messages call it: "a step".</param>
    /// <param name="required">Keys that must be there.</param>
    /// <param name="optional">Keys that may be there.</param>
    public MapShape(string what, string[] required, string[] optional)
    {
        What = what;
        Required = required;
        Keys = [.. required, .. optional];
        _known = [.. Keys];
    }

    public string What { get; }

    /// <summary>All keys, the required ones first.</summary>
    public IReadOnlyList<string> Keys { get; }

    public IReadOnlyList<string> Required { get; }

    public bool Knows(string key) => _known.Contains(key);
}
