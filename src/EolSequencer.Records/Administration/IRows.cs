namespace EolSequencer.Records.Administration;

/// <summary>Rows folded from acts, each under a key: in the database, or in memory when acts are folded again.</summary>
internal interface IRows<TRow>
    where TRow : class
{
    /// <summary>The row under a key; null when there is none.</summary>
    TRow? Find(string key);

    /// <summary>Adds a row or replaces it.</summary>
    void Put(string key, TRow row);

    /// <summary>Every row in the order of its keys.</summary>
    IReadOnlyList<TRow> All();

    /// <summary>How many there are.</summary>
    int Count { get; }

    /// <summary>Rows in which a field that may be asked for has this value, in the order of their keys.</summary>
    /// <param name="field">Name of a field as in the row's JSON, one for which the table has a column.</param>
    IReadOnlyList<TRow> Where(string field, string value);
}
