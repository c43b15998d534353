using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace EolSequencer.Records.Administration;

/// <summary>Rows in memory, as JSON too: so a comparison with a table is one of texts, and a field is found by its name.</summary>
internal sealed class MemoryRows<TRow>(JsonTypeInfo<TRow> form) : IRows<TRow>
    where TRow : class
{
    private readonly SortedDictionary<string, string> _rows = new(StringComparer.Ordinal);

    /// <summary>Each row as the table must have it.</summary>
    public IReadOnlyDictionary<string, string> Texts => _rows;

    public int Count => _rows.Count;

    public TRow? Find(string key) => _rows.TryGetValue(key, out var text) ? Read(text) : null;

    public void Put(string key, TRow row) => _rows[key] = JsonSerializer.Serialize(row, form);

    public IReadOnlyList<TRow> All() => [.. _rows.Values.Select(Read)];

    public IReadOnlyList<TRow> Where(string field, string value) => [.. _rows.Values.Where(text => Has(text, field, value)).Select(Read)];

    private static bool Has(string text, string field, string value)
    {
        using var document = JsonDocument.Parse(text);
        return document.RootElement.TryGetProperty(field, out var found) && found.ValueEquals(value);
    }

    private TRow Read(string text) => JsonSerializer.Deserialize(text, form)!;
}
