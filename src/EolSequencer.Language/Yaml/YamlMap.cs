using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>Keys and values in written order; no key stands twice.</summary>
internal sealed class YamlMap : YamlNode
{
    private readonly Dictionary<string, YamlEntry> _byKey;

    /// <param name="entries">Entries with keys that differ.</param>
    public YamlMap(SourceText source, int start, int end, IReadOnlyList<YamlEntry> entries) : base(source, start, end)
    {
        Entries = entries;
        _byKey = entries.ToDictionary(entry => entry.Key.Text, StringComparer.Ordinal);
    }

    public IReadOnlyList<YamlEntry> Entries { get; }

    public override string Kind => "a map";

    /// <summary>The entry of a key, letter by letter, or <c>null</c>.</summary>
    public YamlEntry? Find(string key) => _byKey.GetValueOrDefault(key);
}
