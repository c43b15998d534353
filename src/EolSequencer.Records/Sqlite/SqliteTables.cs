using EolSequencer.Records.Administration;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Sqlite;

/// <summary>The tables folded from acts, as they are in the database.</summary>
internal class SqliteTables(RecordConnection connection) : IActView
{
    public IRows<PersonRow> People { get; } = new JsonRows<PersonRow>(connection, "person", ActJson.Default.PersonRow);

    public string? SecretHash(string badge)
    {
        var find = connection.Prepare("SELECT hash FROM person_secret WHERE badge = ?").Text(1, badge);
        return find.Next() ? find.Text(0) : null;
    }
}
