using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Sqlite;

/// <summary>Rows as JSON in a table with <c>key</c> and <c>row</c>; its other columns are made of the JSON by the database.</summary>
internal sealed class JsonRows<TRow>(RecordConnection connection, string table, JsonTypeInfo<TRow> form) : IRows<TRow>
    where TRow : class
{
    private readonly Statement _find = connection.Prepare($"SELECT row FROM {table} WHERE key = ?");
    private readonly Dictionary<string, Statement> _where = [];
    private Statement? _put;

    public TRow? Find(string key)
    {
        if (!_find.Text(1, key).Next()) return null;
        var row = Read(_find.Text(0));
        _find.Reset();
        return row;
    }

    public int Count => (int)connection.Number($"SELECT count(*) FROM {table}");

    public void Put(string key, TRow row)
    {
        _put ??= connection.Prepare($"INSERT INTO {table} (key, row) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET row = excluded.row");
        _put.Text(1, key).Text(2, JsonSerializer.Serialize(row, form)).Run();
    }

    public IReadOnlyList<TRow> All() => Rows(connection.Prepare($"SELECT row FROM {table} ORDER BY key"));

    public IReadOnlyList<TRow> Where(string field, string value)
    {
        if (!_where.TryGetValue(field, out var statement))
        {
            // The name of a column, never a text of somebody: fields are asked for by our own code.
            _where[field] = statement = connection.Prepare($"SELECT row FROM {table} WHERE {field} = ? ORDER BY key");
        }

        return Rows(statement.Text(1, value));
    }

    private List<TRow> Rows(Statement statement)
    {
        var rows = new List<TRow>();
        while (statement.Next()) rows.Add(Read(statement.Text(0)));
        return rows;
    }

    private TRow Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, form) ?? throw new FormatException($"a row of {table} is empty");
        }
        catch (JsonException fault)
        {
            throw new FormatException($"a row of {table} cannot be read: {fault.Message}", fault);
        }
    }
}
