using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>The tables in memory, folded again from the acts of a ledger.</summary>
internal sealed class MemoryTables : IActTables
{
    public MemoryRows<PersonRow> People { get; } = new(ActJson.Default.PersonRow);

    IRows<PersonRow> IActTables.People => People;

    /// <summary>Each table by its name in the database, with its rows as they must be.</summary>
    public IEnumerable<(string Table, IReadOnlyDictionary<string, string> Rows)> Named => [("person", People.Texts)];
}
